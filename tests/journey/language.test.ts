import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildWithMadeUpLanguage, madeUpTag } from '../texts/made-up-language';
import { listenForComplaints, openPracticeApp, type PracticeApp } from './practice-app';
import { saidTexts } from './said-texts';
import { screenFaults } from './screen-faults';
import { showScreen, sizes, stages } from './screens';

let app: PracticeApp;
beforeAll(async () => {
  app = await openPracticeApp(await buildWithMadeUpLanguage());
});
afterAll(() => app.close());

/**
 * A word that no translator was given: all others have an accent on each vowel. Labels of channels
 * and units have capitals inside or nothing else, and are the same in every language.
 */
const plainWord = /(?<!\p{L})[A-Za-z][a-z]{2,}(?!\p{L})/gu;

/** Dates are the browser's, by the language and region; products of the invented house are names. */
const kept = /\b\d+ [A-Z][a-z]+ \d{4}\b|\bLeadline\b|\bSub \d\b|\b(Ctrl|Cmd)\b|\bppm\b/g;

describe('with another language', () => {
  it('every word on every sheet is of that language, also those that workers say', async () => {
    const context = await app.browser.newContext({ viewport: { width: 1440, height: 900 } });
    await context.addInitScript((tag) => {
      localStorage.setItem('leadline-locale', JSON.stringify({ language: tag }));
    }, madeUpTag);
    const page = await context.newPage();
    const complaints = listenForComplaints(page, app.address);
    await page.goto(`${app.address}#probe/take`);
    await page.locator('main[aria-busy="false"]').waitFor();
    await page.evaluate(() => document.querySelector('ll-app')?.bench?.startTake());
    await page.waitForFunction(
      () => document.querySelector('ll-app')?.bench?.state.proposal,
      null,
      { timeout: 200_000 },
    );
    const found = new Map<string, string>();
    for (const stage of stages) {
      await showScreen(page, app.address, stage, 'light', sizes[0]);
      for (const said of ['Béíng cómpútéd', 'Béíng wórkéd óút']) {
        await page.getByText(said).waitFor({ state: 'detached', timeout: 60_000 });
      }
      for (const text of await saidTexts(page)) {
        const plain = [...text.replace(kept, '').matchAll(plainWord)].map(([word]) => word);
        if (plain.length > 0 && !found.has(text))
          found.set(text, `${stage}: ${plain.join()}: ${text}`);
      }
      for (const fault of await screenFaults(page)) found.set(fault, `${stage}: ${fault}`);
    }
    expect([...found.values()]).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
