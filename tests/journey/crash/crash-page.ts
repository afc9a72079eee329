import type { Page } from 'playwright-core';

/** Ends the process of a page as a crash does; its tab stays. */
export async function crashPage(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const crashed = page.waitForEvent('crash');
  // Never answered: who would answer is gone.
  session.send('Page.crash').catch(() => undefined);
  await crashed;
}
