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

/** Bytes: a few times what a session of three speakers takes. */
const enough = 40_000_000;

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
  await allow(enough);
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

/** Bytes the app may keep in the browser in all: room for a session, none, or as much as there is. */
async function allow(bytes: number | null): Promise<void> {
  const { origin } = new URL(app.address);
  const quota = bytes === null ? { origin } : { origin, quotaSize: bytes };
  await session.send('Storage.overrideQuotaForOrigin', quota);
}

/**
 * For half a minute the browser goes by the room that it found before, unless somebody asks for more
 * than that: keeps something of that size, which is refused.
 */
async function askForMore(bytes: number): Promise<string> {
  return page.evaluate(
    (size) =>
      new Promise<string>((resolve) => {
        const opening = indexedDB.open('something else', 1);
        opening.onupgradeneeded = () => opening.result.createObjectStore('store');
        opening.onerror = () => resolve(opening.error?.name ?? '');
        opening.onsuccess = () => {
          const database = opening.result;
          const writing = database.transaction('store', 'readwrite');
          writing.objectStore('store').put(new Uint8Array(size), 1);
          const end = (said: string) => {
            database.close();
            resolve(said);
          };
          writing.oncomplete = () => end('kept');
          writing.onabort = () => end(writing.error?.name ?? '');
        };
      }),
    bytes,
  );
}

describe('a browser without room', () => {
  it('is said, with what to do; work goes on in memory, and what is stored stays whole', async () => {
    await page.getByRole('button', { name: 'Sessions', exact: true }).click();
    await page.getByRole('button', { name: 'New session', exact: true }).click();
    await page.getByRole('dialog').waitFor({ state: 'hidden' });
    await rename('Attic');
    await saved().waitFor();
    await allow(1);
    expect(await askForMore(enough)).toBe('QuotaExceededError');
    await rename('Loft');
    await notSaved().waitFor();
    const before = await lookIntoStore(page);
    const said = await bannerText(page);
    expect(said).toContain('no room left to save the session');
    expect(said).toContain('save the session as a file');

    await page.goto(`${app.address}#probe/take`);
    await runPracticeTake(page);
    await page.goto(`${app.address}#propose/crossovers`);
    await headingOf(page, /^Fronts cross over at/);
    // Each time saving is tried again it says so for as long as that takes.
    await notSaved().waitFor();
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
    await allow(null);
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
