import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  listenForComplaints,
  openPracticeApp,
  runPracticeTake,
  type PracticeApp,
} from './practice-app';

let app: PracticeApp;

beforeAll(async () => {
  app = await openPracticeApp();
});
afterAll(() => app.close());

async function freshPage(): Promise<{ page: Page; complaints: string[] }> {
  const context = await app.browser.newContext({ viewport: { width: 1440, height: 900 } });
  const page = await context.newPage();
  const complaints = listenForComplaints(page, app.address);
  await page.goto(app.address);
  await page.getByRole('heading', { level: 1 }).waitFor();
  return { page, complaints };
}

/** Samples of each capture that lies in the browser’s store. */
async function storedCaptures(page: Page): Promise<number[]> {
  return page.evaluate(
    () =>
      new Promise<number[]>((resolve, reject) => {
        const opening = indexedDB.open('leadline');
        opening.onerror = () => reject(new Error('the store cannot be opened'));
        opening.onsuccess = () => {
          const all = opening.result.transaction('captures').objectStore('captures').getAll();
          all.onsuccess = () => {
            opening.result.close();
            resolve(all.result.map(({ frames }: { frames: number }) => frames));
          };
        };
      }),
  );
}

/** The whole text of the settings table, by which proposals are compared, once it is whole. */
async function settings(page: Page): Promise<string> {
  // A proposal without sums comes first; subs are set by arrival until the whole one follows.
  const sums = (): Promise<string | undefined> =>
    page.evaluate(() => document.querySelector('ll-app')?.bench?.state.proposal?.sums);
  await expect.poll(sums, { timeout: 30_000 }).toBe('there');
  return (await page.locator('ll-settings-table tbody').allInnerTexts()).join('\n');
}

describe('the practice room, from a fresh profile', () => {
  it('has proposals on screen after four clicks, and all of it after a reload', async () => {
    const { page, complaints } = await freshPage();
    expect(await page.getByText('Simulated').first().isVisible()).toBe(true);

    await page.getByRole('link', { name: 'Probe', exact: false }).first().click();
    await runPracticeTake(page);
    await page.getByRole('link', { name: 'Propose', exact: false }).first().click();

    await page.getByRole('heading', { level: 1, name: /cross over at \d+\sHz/ }).waitFor();
    await page.getByRole('link', { name: 'List', exact: true }).click();
    await page.getByRole('heading', { level: 1, name: /settings are typed/ }).waitFor();
    const proposed = await settings(page);
    for (const channel of ['FL', 'FR', 'FC', 'SiL', 'SiR', 'TpFL', 'TpFR', 'TpBL', 'TpBR']) {
      expect(proposed).toContain(channel);
    }
    const [samples, ...others] = await storedCaptures(page);
    expect(others).toEqual([]);
    expect(samples).toBeGreaterThan(48_000 * 30);

    await page.getByText('Saved in this browser').waitFor();
    await page.reload();
    await page.getByRole('heading', { level: 1, name: /settings are typed/ }).waitFor();
    expect(await settings(page)).toBe(proposed);
    expect(await storedCaptures(page)).toEqual([samples]);
    expect(await page.getByText('Simulated').first().isVisible()).toBe(true);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('falls silent at once on Esc, says so, and the take can be run again', async () => {
    const { page, complaints } = await freshPage();
    await page.goto(`${app.address}#probe`);
    await page.getByRole('button', { name: /^Run the take/ }).click();
    await page.getByText(/^Playing F/).waitFor();
    await page.keyboard.press('Escape');
    await page.getByText('Nothing is playing', { exact: true }).waitFor({ timeout: 5_000 });
    expect(await page.getByRole('alert').filter({ hasText: /\w/ }).innerText()).toMatch(/stopped/i);
    expect(await storedCaptures(page)).toEqual([]);
    await page.getByRole('button', { name: /^Run the take/ }).click();
    await page.getByText(/^Playing F/).waitFor();
    await page.keyboard.press('Escape');
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('keeps a chosen layout, conditions, name and theme over a reload', async () => {
    const { page, complaints } = await freshPage();
    await page.getByRole('radio', { name: '7.1.4' }).check();
    await page.getByLabel('Temperature in the room').fill('23,5');
    await page.keyboard.press('Enter');
    await page.getByLabel('Session name').fill('Garden room');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: /^Theme/ }).click();
    await page.getByRole('button', { name: /^Theme: light/ }).click();
    await page.getByText('Saved in this browser').waitFor();
    await page.reload();
    await page.getByRole('heading', { level: 1, name: /seven speakers/ }).waitFor();
    expect(await page.getByLabel('Temperature in the room').inputValue()).toBe('23.5');
    expect(await page.getByLabel('Session name').inputValue()).toBe('Garden room');
    await page.getByRole('button', { name: /^Theme: dark/ }).waitFor();
    // A page that asks for dark is dark: its ground is nearly black.
    const ground = await page.evaluate(() => getComputedStyle(document.body).backgroundColor);
    expect(Math.max(...(ground.match(/\d+/g) ?? []).map(Number))).toBeLessThan(48);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('refuses a layout that means nothing and keeps the one in hand', async () => {
    const { page, complaints } = await freshPage();
    await page.getByLabel('Another, by its name').fill('eleven');
    await page.keyboard.press('Enter');
    await page.getByText('The layout is still 5.2.4.').waitFor();
    await page.reload();
    await page.getByRole('heading', { level: 1, name: /five speakers/ }).waitFor();
    expect(complaints).toEqual([]);
    await page.context().close();
  });
});
