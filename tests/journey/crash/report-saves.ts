import type { Page } from 'playwright-core';
import type { KeptSession } from './kept-session';

/**
 * Calls back with what is on the bench whenever the app says that it is saved. What a session holds
 * before it is first changed was never saved, and nobody said so.
 */
export async function reportSaves(page: Page, said: (session: KeptSession) => void): Promise<void> {
  await page.exposeFunction('reportSaved', said);
  await page.evaluate(() => {
    const bench = document.querySelector('ll-app')?.bench;
    if (!bench) throw new Error('the app has no bench');
    const report = (window as unknown as { reportSaved: (session: unknown) => void }).reportSaved;
    let last = bench.state.document;
    bench.subscribe(() => {
      const { saved, document } = bench.state;
      if (saved !== 'saved' || document === last) return;
      last = document;
      const takes = document.takes.map(({ id, captureId, readings }) => {
        return { id, captureId, read: readings !== null };
      });
      const { id, name, layout, typed, chosenCrossoverHz } = document;
      report({ id, name, layout, takes, typed, crossovers: Object.keys(chosenCrossoverHz) });
    });
  });
}
