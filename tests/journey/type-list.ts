import type { Page } from 'playwright-core';
import { keyboard, tabTo } from './hands';
import { headingOf } from './headings';
import { benchState } from './live-app';

/**
 * On Propose with its sums there or to come: sets the fronts to the next crossover and types the
 * whole list, all by keyboard; gives the crossover that was typed for them, Hz.
 */
export async function typeListByKeyboard(page: Page): Promise<number> {
  const hands = keyboard(page);
  await hands.press('link', 'Crossovers');
  await showFronts(page);
  await tabTo(page, 'Crossover of Fronts');
  await page.keyboard.press('ArrowRight');
  await headingOf(page, /^Fronts are set to \d+\sHz; \d+\sHz is proposed$/);
  const own = (await benchState(page)).document.chosenCrossoverHz.fronts;
  if (own === undefined) throw new Error('the fronts have no crossover of their own');

  await hands.press('link', 'List');
  await headingOf(page, /^0 of \d+ settings are typed$/);
  await page
    .getByText(/^The subs are still being worked out/)
    .waitFor({ state: 'detached', timeout: 60_000 });
  await typeAll(page);
  return own;
}

/** Brings the fronts in view, whichever group of speakers is. */
async function showFronts(page: Page): Promise<void> {
  const heading = page.getByRole('heading', { level: 1 });
  for (let pressed = 0; pressed < 9; pressed++) {
    if (/\bfronts\b/i.test((await heading.textContent()) ?? '')) return;
    if (pressed === 0) await tabTo(page, /^[A-Z][a-z ]+\s(\d+\sHz|full range)$/);
    await page.keyboard.press('ArrowLeft');
  }
  throw new Error(`no arrow leads to the fronts, only to ${await heading.textContent()}`);
}

/** Enter after Enter until everything is typed, as a person does who looks at the heading. */
async function typeAll(page: Page): Promise<void> {
  await tabTo(page, /^Fronts/);
  const lines = await page.locator('label[data-line]').count();
  const heading = page.getByRole('heading', { level: 1 });
  for (let pressed = 0; pressed < 3 * lines; pressed++) {
    if ((await heading.textContent())?.trim() === 'Everything is typed') return;
    await page.keyboard.press('Enter');
  }
  const { document, proposal } = await benchState(page);
  const said = `${await heading.textContent()}, sums ${proposal?.sums}`;
  throw new Error(`not all typed: ${said}, ${JSON.stringify(document.typed)}`);
}
