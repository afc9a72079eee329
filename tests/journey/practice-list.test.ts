import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { keyboard, tabTo } from './hands';
import { headingOf } from './headings';
import { benchState } from './live-app';
import { listenForComplaints, openPracticeApp, type PracticeApp } from './practice-app';

let app: PracticeApp;

beforeAll(async () => {
  app = await openPracticeApp();
});
afterAll(() => app.close());

describe('the keyboard alone, in the practice room', () => {
  it('leads from a take through another crossover to a list that is typed', async () => {
    const context = await app.browser.newContext({ viewport: { width: 1440, height: 900 } });
    const page = await context.newPage();
    const complaints = listenForComplaints(page, app.address);
    await page.goto(`${app.address}#probe/take`);
    await headingOf(page, /./);
    const hands = keyboard(page);
    await hands.press('button', /^Run the take/);
    const idle = page.getByText('Nothing is playing', { exact: true });
    await idle.waitFor({ state: 'hidden', timeout: 10_000 });
    await idle.waitFor({ timeout: 200_000 });

    await hands.press('link', /Go to Propose$/);
    await headingOf(page, /^Fronts cross over at/);
    await tabTo(page, 'Crossover of Fronts');
    await page.keyboard.press('ArrowRight');
    await headingOf(page, /^Fronts are set to \d+\sHz; \d+\sHz is proposed$/);
    const { document } = await benchState(page);
    const own = document.chosenCrossoverHz.fronts;
    expect(own).toBeGreaterThan(0);

    await hands.press('link', 'List');
    await headingOf(page, /^0 of \d+ settings are typed$/);
    await page
      .getByText(/^The subs are still being worked out/)
      .waitFor({ state: 'detached', timeout: 60_000 });
    await typeAll(page);
    expect((await benchState(page)).document.typed['crossover fronts']).toBe(`${own} Hz`);

    await page.getByText('Saved in this browser').waitFor();
    await page.reload();
    await headingOf(page, 'Everything is typed');
    expect(complaints).toEqual([]);
    await context.close();
  });
});

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
