import type { Page } from 'playwright-core';

/**
 * All a page says, one text a piece: what is shown, names and titles for those who do not see it,
 * and what stands in fields. Looks through all open shadow roots; closed details count as said.
 */
export async function saidTexts(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const said = new Set<string>();
    const add = (text: string | null): void => {
      const tidy = text?.replace(/[ \n\t]+/g, ' ').trim() ?? '';
      if (tidy !== '') said.add(tidy);
    };

    function visit(element: Element): void {
      if (element.matches('style, script, noscript')) return;
      for (const name of ['aria-label', 'aria-description', 'title', 'placeholder']) {
        add(element.getAttribute(name));
      }
      if (element instanceof HTMLInputElement && element.type !== 'radio') add(element.value);
      const inside = element.shadowRoot ?? element;
      // A number and its unit may stand in pieces of one line.
      const isLine = [...inside.childNodes].some(
        (one) => one.nodeType === Node.TEXT_NODE && one.nodeValue?.trim(),
      );
      if (isLine) add(inside.textContent);
      for (const child of inside.children) visit(child);
    }

    visit(document.documentElement);
    return [...said];
  });
}
