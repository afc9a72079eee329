import type { CDPSession, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { lookIntoStore } from './crash/look-into-store';
import { headingOf } from './headings';
import { bannerText, benchState } from './live-app';
import {
  listenForComplaints,
  openPracticeApp,
  runPracticeTake,
  type PracticeApp,
} from './practice-app';

let app: PracticeApp;
let page: Page;
let session: CDPSession;
let complaints: string[];

beforeAll(async () => {
  app = await openPracticeApp();
});
afterAll(() => app.close());

beforeEach(async () => {
  const context = await app.browser.newContext({ viewport: { width: 1440, height: 900 } });
  page = await context.newPage();
  complaints = listenForComplaints(page, app.address);
  session = await page.context().newCDPSession(page);
  await page.goto(app.address);
  await page.getByRole('radio', { name: '3.1', exact: true }).check();
  await rename('Garden room');
  await saved().waitFor();
});
afterEach(async () => {
  await page.context().close();
  expect(complaints).toEqual([]);
});

async function rename(name: string): Promise<void> {
  await page.getByLabel('Session name', { exact: true }).fill(name);
  await page.keyboard.press('Enter');
}

const saved = () => page.getByText('Saved in this browser', { exact: true });
const notSaved = () => page.getByText('Not saved', { exact: true });

/** Leaves so many bytes beyond what is used now, or as many as there are. */
async function leaveRoom(bytes: number | null): Promise<void> {
  const { origin } = new URL(app.address);
  if (bytes === null)
    return void (await session.send('Storage.overrideQuotaForOrigin', { origin }));
  const { usage } = await session.send('Storage.getUsageAndQuota', { origin });
  const quotaSize = Math.round(usage) + bytes;
  await session.send('Storage.overrideQuotaForOrigin', { origin, quotaSize });
}

/**
 * Renames the session until that is not saved: for half a minute the browser goes by the room that it
 * found before.
 */
async function renameUntilRefused(name: string): Promise<void> {
  const refused = async (): Promise<boolean> => {
    await rename(`${name} for now`);
    await rename(name);
    await expect.poll(() => benchState(page).then(({ saved }) => saved)).not.toBe('saving');
    return notSaved().isVisible();
  };
  await expect.poll(refused, { timeout: 120_000, interval: 2000 }).toBe(true);
}

describe('a browser without room', () => {
  it('is said, with what to do; work goes on in memory, and what is stored stays whole', async () => {
    await page.getByRole('button', { name: 'Sessions', exact: true }).click();
    await page.getByRole('button', { name: 'New session', exact: true }).click();
    await rename('Attic');
    await saved().waitFor();
    await leaveRoom(0);
    await renameUntilRefused('Loft');
    const before = await lookIntoStore(page);
    const said = await bannerText(page);
    expect(said).toContain('no room left to save the session');
    expect(said).toContain('save the session as a file');

    await page.goto(`${app.address}#probe/take`);
    await runPracticeTake(page);
    await page.goto(`${app.address}#propose/crossovers`);
    await headingOf(page, /^Fronts cross over at/);
    expect(await notSaved().isVisible()).toBe(true);
    await page.getByRole('button', { name: 'Sessions', exact: true }).click();
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save this session as a file' }).click();
    expect((await download).suggestedFilename()).toBe('Loft.leadline.zip');
    await page.getByRole('button', { name: 'Close', exact: true }).click();

    expect(await lookIntoStore(page)).toEqual(before);
    const other = await page.context().newPage();
    await other.goto(app.address);
    const name = other.getByLabel('Session name', { exact: true });
    await expect.poll(() => name.inputValue()).not.toBe('');
    expect(before.sessions.map((one) => one.name)).toContain(await name.inputValue());
    await other.close();

    // Removing needs no room.
    await page.getByRole('button', { name: 'Sessions', exact: true }).click();
    await page.getByRole('button', { name: 'Delete: Garden room', exact: true }).click();
    const remove = page.getByRole('button', { name: 'Remove for good: Garden room' });
    await remove.click();
    await remove.waitFor({ state: 'detached' });
    expect((await lookIntoStore(page)).sessions).toHaveLength(before.sessions.length - 1);
    await page.getByRole('button', { name: 'Close', exact: true }).click();

    // Saving is tried again every ten seconds, by itself.
    await leaveRoom(null);
    await saved().waitFor({ timeout: 60_000 });
    expect(await bannerText(page)).toBe('');
    const { document } = await benchState(page);
    await page.reload();
    await headingOf(page, /^Fronts cross over at/);
    expect((await benchState(page)).document).toEqual(document);
    const [take] = document.takes;
    const { captures } = await lookIntoStore(page);
    expect(captures[take?.captureId ?? '']).toBeGreaterThan(48_000);
  });
});
