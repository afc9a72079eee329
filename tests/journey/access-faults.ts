import axe from 'axe-core';
import type { Page } from 'playwright-core';

/** The rules of WCAG 2.0 to 2.2, levels A and AA. */
const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/**
 * What axe finds against WCAG 2.2 A and AA on the screen as it stands, one sentence a fault. It looks
 * through all open shadow roots.
 */
export async function accessFaults(page: Page): Promise<string[]> {
  // Evaluated by the debugger, which the page's own policy leaves alone.
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axe.source);
  return page.evaluate(async (values) => {
    const { axe: inPage } = window as unknown as { axe: typeof axe };
    const { violations } = await inPage.run(document, {
      runOnly: { type: 'tag', values },
      resultTypes: ['violations'],
      preload: false,
    });
    return violations.flatMap(({ id, nodes }) =>
      nodes.map(({ target, failureSummary = '' }) => {
        const where = target.flat().slice(-3).join(' ');
        return `${id} at ${where}: ${failureSummary.replace(/\s+/g, ' ')}`;
      }),
    );
  }, tags);
}
