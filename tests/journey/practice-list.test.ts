import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { keyboard } from './hands';
import { headingOf } from './headings';
import { benchState } from './live-app';
import { listenForComplaints, openPracticeApp, type PracticeApp } from './practice-app';
import { typeListByKeyboard } from './type-list';

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

    const own = await typeListByKeyboard(page);
    expect((await benchState(page)).document.typed['crossover fronts']).toBe(`${own} Hz`);

    await page.getByText('Saved in this browser').waitFor();
    await page.reload();
    await headingOf(page, 'Everything is typed');
    expect(complaints).toEqual([]);
    await context.close();
  });
});
