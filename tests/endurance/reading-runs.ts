import { openPracticeApp, runPracticeTake } from '../journey/practice-app';
import { tasksDuring, type HandleRow } from './handle-runs';

/**
 * Takes of a layout in the practice room, from the button until the screen has its readings and its
 * proposal: every task of the page's main thread meanwhile. The first take warms up.
 */
export async function runReadings(layout: string, takes: number): Promise<HandleRow[]> {
  const app = await openPracticeApp();
  try {
    const context = await app.browser.newContext({ viewport: { width: 1440, height: 900 } });
    const page = await context.newPage();
    await page.goto(`${app.address}#probe/take`);
    await page.waitForFunction(() => document.querySelector('ll-app')?.bench !== undefined);
    await page.evaluate((name) => document.querySelector('ll-app')?.bench?.setLayout(name), layout);
    const session = await context.newCDPSession(page);
    const rows: HandleRow[] = [];
    for (let take = 1; take <= takes; take++) {
      const tasks = await tasksDuring(session, async () => {
        await runPracticeTake(page);
        await page.waitForFunction(
          () => {
            const state = document.querySelector('ll-app')?.bench?.state;
            return state?.proposal?.sums === 'there' && state.saved === 'saved';
          },
          null,
          { timeout: 120_000 },
        );
      });
      rows.push({ what: `take ${take}`, ...tasks });
    }
    return rows;
  } finally {
    await app.close();
  }
}
