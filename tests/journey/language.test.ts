import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildWithMadeUpLanguage, madeUpName, madeUpTag } from '../texts/made-up-language';
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
    await chooseTheLanguage(page);
    // What was named in the language of then: a session, a seat, steps that undo takes back.
    const named = ['New room', 'Seat 1', 'Úndó: Take'];
    const found = new Map<string, string>();
    const look = async (stage: string, foreign: readonly string[] = named): Promise<void> => {
      for (const said of ['Béíng cómpútéd', 'Béíng wórkéd óút']) {
        await page.getByText(said).waitFor({ state: 'detached', timeout: 60_000 });
      }
      for (const text of await saidTexts(page)) {
        const bare = foreign.reduce((left, name) => left.replaceAll(name, ''), text);
        const plain = [...bare.replace(kept, '').matchAll(plainWord)].map(([word]) => word);
        if (plain.length > 0 && !found.has(text))
          found.set(text, `${stage}: ${plain.join()}: ${text}`);
      }
      for (const fault of await screenFaults(page)) found.set(fault, `${stage}: ${fault}`);
    };
    for (const stage of stages) {
      await showScreen(page, app.address, stage, 'light', sizes[0]);
      await look(stage);
    }
    await showScreen(page, app.address, 'patch/sheet', 'light', sizes[0]);
    await page.getByRole('button', { name: 'Élévén óútpúts ánd twó súbs' }).click();
    const names = [...named, ...(await sheetNames(page))];
    for (const stage of stages.filter((one) => /^(patch|propose|prove)/.test(one))) {
      await showScreen(page, app.address, stage, 'light', sizes[0]);
      await look(`${stage} with a sheet`, names);
    }
    await showScreen(page, app.address, 'patch/sheet', 'light', sizes[0]);
    await page.getByRole('button', { name: 'Édít ás á dráft' }).click();
    await look('draft of a sheet', names);
    expect([...found.values()]).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });
});

/** Chooses it under Settings, after a take was read in English: its readings are said anew. */
async function chooseTheLanguage(page: Page): Promise<void> {
  await page.getByRole('button', { name: /^Settings/ }).click();
  const dialog = page.getByRole('dialog', { name: 'Settings' });
  await dialog.getByRole('radio', { name: madeUpName }).check();
  await page.keyboard.press('Escape');
  await page.waitForFunction(
    (tag) =>
      document
        .querySelector('ll-app')
        ?.bench?.state.document.takes.every(({ saidIn }) => saidIn?.startsWith(`${tag} `)),
    madeUpTag,
    { timeout: 60_000 },
  );
}

/** What the sheet itself calls things, longest first: it is in the language of who wrote it. */
async function sheetNames(page: Page): Promise<string[]> {
  const sheet = await page.waitForFunction(
    () => document.querySelector('ll-app')?.bench?.state.document.sheet,
  );
  const names: string[] = [];
  JSON.parse(JSON.stringify(await sheet.jsonValue()), (_, value: unknown) => {
    if (typeof value === 'string' && value.length > 2) names.push(value);
    return value;
  });
  return names.sort((one, other) => other.length - one.length);
}
