import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accessFaults } from './access-faults';
import {
  listenForComplaints,
  openPracticeApp,
  runPracticeTake,
  type PracticeApp,
} from './practice-app';
import { saidTexts } from './said-texts';
import { screenFaults } from './screen-faults';
import { settled, showScreen, sizes, stages } from './screens';

let app: PracticeApp;
beforeAll(async () => {
  app = await openPracticeApp();
});
afterAll(() => app.close());

/** What has points in every language: names of layouts, such as 5.1.4 and 7.1, and the standard's. */
const names =
  /\b\d{1,2}\.\d\.\d\b|\b(2\.0|2\.1|3\.1|5\.1|7\.1)\b(?![\u202f\u00a0 ](m|ms|dB|Hz|kHz|s)\b)/g;

const wrongs = {
  metric:
    /^(ft|in|°F)$|\d['"]|\d[ \u202f\u00a0](ft|in|inch|inches|feet|°F)\b(?! (the|a|this|all|one|its|each)\b)/,
  imperial:
    /^(m|cm|mm|°C)$|\d[ \u202f\u00a0](m|cm|mm|m\/s|metres?|°C)(?![\wµ])|\b(centi|milli)?metres?\b/i,
  point: /\d\.\d/,
  comma: /\d,\d/,
} as const;

/** Texts of all sheets that say something in a way they should not. */
async function wrongTexts(page: Page, kinds: readonly (keyof typeof wrongs)[]): Promise<string[]> {
  const found = new Map<string, string>();
  for (const stage of stages) {
    await showScreen(page, app.address, stage, 'light', sizes[0]);
    for (const text of await saidTexts(page)) {
      const bare = text.replace(names, '');
      const kind = kinds.find((one) => wrongs[one].test(bare));
      if (kind && !found.has(text)) found.set(text, `${stage}, ${kind}: ${text}`);
    }
    for (const fault of await screenFaults(page)) found.set(fault, `${stage}: ${fault}`);
  }
  return [...found.values()];
}

async function open(locale: string): Promise<{ page: Page; complaints: string[] }> {
  const context = await app.browser.newContext({ locale, viewport: { width: 1440, height: 900 } });
  const page = await context.newPage();
  const complaints = listenForComplaints(page, app.address);
  await page.goto(`${app.address}#probe/take`);
  await settled(page);
  await runPracticeTake(page);
  return { page, complaints };
}

describe('the practice room', () => {
  it('of a browser from Germany is metric, with a comma in all numbers', async () => {
    const { page, complaints } = await open('de-DE');
    expect(await wrongTexts(page, ['metric', 'point'])).toEqual([]);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('of a browser from America is imperial, until it is told otherwise, which holds', async () => {
    const { page, complaints } = await open('en-US');
    expect(await wrongTexts(page, ['imperial', 'comma'])).toEqual([]);
    await showScreen(page, app.address, 'plan', 'dark', sizes[2]);
    await page.getByRole('button', { name: 'Settings: imperial units, numbers, theme.' }).click();
    const dialog = page.getByRole('dialog', { name: 'Settings' });
    await dialog.getByText('2.4 m').waitFor();
    expect(await screenFaults(page)).toEqual([]);
    expect(await accessFaults(page)).toEqual([]);
    await dialog.getByRole('radio', { name: 'Metric' }).check();
    await dialog.getByRole('radio', { name: '1,5, 31 January' }).check();
    expect(await dialog.innerText()).toContain('2,40\u202fm');
    expect(await dialog.innerText()).toContain('31 January 2026, 14:05');
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
    expect((await saidTexts(page)).filter((text) => wrongs.metric.test(text))).toEqual([]);
    await page.reload();
    await page.getByRole('button', { name: 'Settings: metric units, numbers, theme.' }).waitFor();
    expect(complaints).toEqual([]);
    await page.context().close();
  });
});
