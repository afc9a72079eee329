import type { Page } from 'playwright-core';

/**
 * Drawings on screen that say nothing to who cannot see them, one sentence a drawing. A drawing is
 * told by the table of numbers in its figure, by a name of its own or by named things inside it; a
 * picture of pixels by its table alone. Looks through all open shadow roots.
 */
export async function chartFaults(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const faults: string[] = [];

    function visit(root: Element | Document | ShadowRoot): void {
      for (const one of root.children) {
        if (one.matches('svg, canvas')) judge(one);
        else visit(one);
        if (one.shadowRoot) visit(one.shadowRoot);
      }
    }

    function judge(drawing: Element): void {
      const { width, height } = drawing.getBoundingClientRect();
      // Smaller ones are icons and bars beside the words they illustrate.
      if (width < 90 || height < 40 || !drawing.checkVisibility()) return;
      const figure = drawing.closest('figure');
      if (figure?.querySelector('ll-number-table, ll-spectrum-numbers')) return;
      const named = drawing.matches('svg[role=img][aria-label]:not([aria-label=""])');
      const inside = drawing.querySelector(
        ':is([role=option], [role=button])[aria-label]:not([aria-label=""])',
      );
      if (named || inside) return;
      const host = (drawing.getRootNode() as ShadowRoot).host.localName;
      faults.push(`nothing tells the ${drawing.localName} of ${host} in words or numbers`);
    }

    visit(document);
    return faults;
  });
}
