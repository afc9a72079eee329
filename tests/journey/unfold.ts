import type { Page } from 'playwright-core';
import { settled } from './screens';

/** Opens everything that unfolds while `look` looks, then closes what was closed before. */
export async function unfolded(page: Page, look: () => Promise<void>): Promise<void> {
  const opened = await page.evaluateHandle(() => {
    const closed: HTMLDetailsElement[] = [];
    const visit = (root: Document | ShadowRoot): void => {
      for (const one of root.querySelectorAll('*')) {
        if (one instanceof HTMLDetailsElement && !one.open) closed.push(one);
        if (one.shadowRoot) visit(one.shadowRoot);
      }
    };
    visit(document);
    for (const one of closed) one.open = true;
    return closed;
  });
  await settled(page);
  await look();
  await opened.evaluate((closed) => {
    for (const one of closed) one.open = false;
  });
  await opened.dispose();
}
