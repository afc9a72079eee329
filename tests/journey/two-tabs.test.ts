import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { crashPage } from './crash/crash-page';
import { headingOf } from './headings';
import { bannerText, benchState } from './live-app';
import {
  listenForComplaints,
  openPracticeApp,
  runPracticeTake,
  type PracticeApp,
} from './practice-app';

let app: PracticeApp;
let context: BrowserContext;
let complaints: string[][];
let fetchesFail: boolean;

beforeAll(async () => {
  app = await openPracticeApp();
});
afterAll(() => app.close());

beforeEach(async () => {
  complaints = [];
  fetchesFail = false;
  context = await app.browser.newContext({ viewport: { width: 1440, height: 900 } });
});
afterEach(async () => {
  await context.close();
  const heard = complaints.flat().filter((one) => !(fetchesFail && one.includes('ERR_FAILED')));
  expect(heard).toEqual([]);
});

async function openTab(): Promise<Page> {
  const page = await context.newPage();
  complaints.push(listenForComplaints(page, app.address));
  await page.goto(app.address);
  await headingOf(page, /./);
  return page;
}

async function rename(page: Page, name: string): Promise<void> {
  await page.getByLabel('Session name', { exact: true }).fill(name);
  await page.keyboard.press('Enter');
}

async function untilNamed(page: Page, name: string): Promise<void> {
  const shown = page.getByLabel('Session name', { exact: true });
  await expect.poll(() => shown.inputValue(), { timeout: 30_000 }).toBe(name);
}

const follows = (page: Page) => page.getByText('This tab follows', { exact: false });
const takenOver = (page: Page) => page.getByText('You can go on here', { exact: false });
const saved = (page: Page) => page.getByText('Saved in this browser', { exact: true });

describe('two tabs on one session', () => {
  it('are one that writes, and one that shows it and says so', async () => {
    const writer = await openTab();
    await writer.getByRole('radio', { name: '3.1', exact: true }).check();
    const follower = await openTab();
    await follows(follower).waitFor();
    await follower.getByText('Follows another tab', { exact: true }).waitFor();
    expect(await follows(writer).count()).toBe(0);

    await rename(writer, 'Garden room');
    await untilNamed(follower, 'Garden room');
    await writer.goto(`${app.address}#probe/take`);
    await runPracticeTake(writer);
    await follower.goto(`${app.address}#propose/crossovers`);
    await headingOf(follower, /^Fronts cross over at/);
    expect((await benchState(follower)).document).toEqual((await benchState(writer)).document);

    await rename(follower, 'Mine');
    await untilNamed(follower, 'Garden room');
    expect(await bannerText(follower)).toContain('Nothing was changed');
    expect((await benchState(writer)).document.name).toBe('Garden room');

    await writer.getByRole('button', { name: 'Sessions', exact: true }).click();
    await writer.getByRole('button', { name: 'New session', exact: true }).click();
    await untilNamed(follower, 'New room');
  });

  it('change places once the one that writes is closed', async () => {
    const writer = await openTab();
    await rename(writer, 'Garden room');
    await saved(writer).waitFor();
    const follower = await openTab();
    await follows(follower).waitFor();
    await writer.close();
    await takenOver(follower).waitFor();
    await saved(follower).waitFor();
    await rename(follower, 'Loft');
    await saved(follower).waitFor();

    const third = await openTab();
    await follows(third).waitFor();
    await untilNamed(third, 'Loft');
  });

  it('lose nothing when the one that writes crashes', async () => {
    const writer = await openTab();
    await rename(writer, 'Garden room');
    await saved(writer).waitFor();
    const follower = await openTab();
    await follows(follower).waitFor();
    await crashPage(writer);
    // What was still fetched through the process that crashed fails with it, and is fetched again.
    fetchesFail = true;
    await takenOver(follower).waitFor();
    await untilNamed(follower, 'Garden room');
    await rename(follower, 'Loft');
    await saved(follower).waitFor();
  });
});
