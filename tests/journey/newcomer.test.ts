import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { hasText, headingOf } from './headings';
import { keyboard, mouse, type Hands } from './hands';
import { listenForComplaints, openPracticeApp, type PracticeApp } from './practice-app';

let app: PracticeApp;

beforeAll(async () => {
  app = await openPracticeApp();
});
afterAll(() => app.close());

/** Speakers in wiring order, as the ear check lists them. */
async function earOrder(page: Page): Promise<string[]> {
  return page.locator('ll-ear-list .label').allInnerTexts();
}

const heardHere = /^Heard here/;

/** Waits until a channel sounds, says where it was heard, and gives its label. */
async function sounding(page: Page, before: string | null): Promise<string> {
  const label = page.locator('ll-ear-sheet .channel');
  await page.getByRole('button', { name: heardHere }).and(page.locator(':enabled')).waitFor();
  if (before !== null) await label.filter({ hasNotText: hasText(before) }).waitFor();
  await page.getByRole('button', { name: heardHere }).and(page.locator(':enabled')).waitFor();
  return label.innerText();
}

async function declareAndWire(page: Page, hands: Hands): Promise<void> {
  // A newcomer picks wrongly at first.
  await hands.choose('2.1');
  await headingOf(page, /two speakers/);
  await hands.choose('5.2.4');
  await headingOf(page, /five speakers/);
  await hands.press('link', /^\d? ?Patch/);
  await headingOf(page, 'Which processor feeds the speakers?');
  await hands.press('button', 'Eleven outputs and two subs');
  await headingOf(page, /^The processor is “/);
  await hands.press('link', 'Next: Wiring');
  await headingOf(page, 'Each of the 11 speakers has its output');
}

/** Plays every channel; two of them are heard at each other's place. */
async function hearAll(page: Page, hands: Hands, crossed: readonly [string, string]) {
  await hands.press('link', 'Next: Ear check');
  await headingOf(page, /^Prove by ear that all 11/);
  const order = await earOrder(page);
  expect(order).toHaveLength(11);
  await hands.press('button', /^Play FL/);
  let at: string | null = null;
  for (let answered = 0; answered < order.length; answered++) {
    at = await sounding(page, at);
    const partner = crossed.find((label) => label !== at);
    if (!crossed.includes(at) || partner === undefined) {
      await hands.answer('h', heardHere);
      continue;
    }
    await hands.answer('e', /^Heard elsewhere/);
    await page.getByText('Where did it come from?').waitFor();
    const onPlan = page.locator(`ll-side .speaker[data-channel="${partner}"] .hit`);
    await hands.point(order.indexOf(partner) + 1, onPlan.first());
  }
}

const ways = [
  ['the keyboard alone', keyboard],
  ['the mouse alone', mouse],
] as const;

describe.each(ways)('a newcomer with %s', (_, handsOf) => {
  it('declares 5.2.4, gets it wired, and finds two exchanged plugs by ear', async () => {
    const context = await app.browser.newContext({ viewport: { width: 1440, height: 900 } });
    const page = await context.newPage();
    const complaints = listenForComplaints(page, app.address);
    await page.goto(app.address);
    await headingOf(page, /./);
    const hands = handsOf(page);

    await declareAndWire(page, hands);
    const drawing = page.locator('ll-wiring-drawing');
    for (const label of ['FL', 'FC', 'SiR', 'TpFL', 'TpBR', 'Sub 1', 'Sub 2']) {
      await drawing.getByText(label, { exact: true }).first().waitFor();
    }

    await hearAll(page, hands, ['SiL', 'SiR']);
    await headingOf(page, 'One thing to put right');
    const said = page.getByRole('region', { name: 'Conclusion' });
    await said.getByText('Channels SiL and SiR are exchanged.').waitFor();

    await hands.press('button', 'Play only these again');
    let at: string | null = null;
    for (const label of ['SiL', 'SiR']) {
      at = await sounding(page, at);
      expect(at).toBe(label);
      await hands.answer('h', heardHere);
    }
    await headingOf(page, 'Heard: every channel sounds from its own speaker');
    await page.getByText('Nothing is playing', { exact: true }).waitFor();

    await page.getByText('Saved in this browser').waitFor();
    await page.reload();
    await headingOf(page, 'Heard: every channel sounds from its own speaker');
    expect(complaints).toEqual([]);
    await context.close();
  });
});
