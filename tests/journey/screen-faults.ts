import type { Page } from 'playwright-core';

/**
 * What is wrong with the text on screen, one sentence a fault: text that leaves its box or the
 * window, text over other text, numbers that are none. Looks through all open shadow roots.
 */
export async function screenFaults(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    interface Shown {
      readonly text: string;
      readonly rect: DOMRect;
      readonly layer: string;
    }
    const faults: string[] = [];
    const shown: Shown[] = [];

    function parentOf(element: Element): Element | null {
      if (element.assignedSlot) return element.assignedSlot;
      if (element.parentElement) return element.parentElement;
      const root = element.getRootNode();
      return root instanceof ShadowRoot ? root.host : null;
    }

    function ancestors(element: Element): Element[] {
      const found: Element[] = [];
      for (let at: Element | null = element; at; at = parentOf(at)) found.push(at);
      return found;
    }

    /** The part of a rectangle its scrolling and clipping ancestors let through. */
    function clipped(rect: DOMRect, above: readonly Element[]): DOMRect | null {
      let { left, top, right, bottom } = rect;
      for (const element of above) {
        const { overflowX, overflowY } = getComputedStyle(element);
        if (overflowX === 'visible' && overflowY === 'visible') continue;
        if (element === document.documentElement || element === document.body) continue;
        const box = element.getBoundingClientRect();
        left = Math.max(left, box.left);
        right = Math.min(right, box.right);
        top = Math.max(top, box.top);
        bottom = Math.min(bottom, box.bottom);
      }
      return right - left > 1 && bottom - top > 1
        ? new DOMRect(left, top, right - left, bottom - top)
        : null;
    }

    function visit(node: Node, layer: string): void {
      if (node instanceof Element) {
        if (node.matches('style, script, title, .unseen, noscript')) return;
        const style = getComputedStyle(node);
        if (style.display === 'none' || style.visibility === 'hidden') return;
        // What a closed <details> holds has a place but is not painted.
        if (style.display !== 'contents' && !node.checkVisibility()) return;
        const fixed = style.position === 'fixed' || style.position === 'sticky';
        const inner = fixed ? node.localName : layer;
        for (const child of node.shadowRoot?.childNodes ?? node.childNodes) visit(child, inner);
        return;
      }
      const text = node.nodeValue?.replace(/\s+/g, ' ').trim() ?? '';
      const parent = node.parentElement ?? (node.getRootNode() as ShadowRoot).host;
      if (node.nodeType !== Node.TEXT_NODE || text === '') return;
      if (/\bNaN\b|\bundefined\b|\bInfinity\b|\[object/.test(text)) faults.push(`says “${text}”`);
      const range = document.createRange();
      range.selectNodeContents(node);
      const above = ancestors(parent);
      const scrolls = above.some((one) => /auto|scroll/.test(getComputedStyle(one).overflowX));
      for (const rect of range.getClientRects()) {
        if (rect.width < 1 || rect.height < 1) continue;
        if (!scrolls && rect.right > innerWidth + 1) faults.push(`“${text}” leaves the window`);
        const seen = clipped(rect, above);
        if (seen) shown.push({ text, rect: seen, layer });
      }
      if (parent instanceof SVGElement) return;
      const block = above.find((one) => getComputedStyle(one).display !== 'inline');
      if (
        block instanceof HTMLElement &&
        !/auto|scroll/.test(getComputedStyle(block).overflowX) &&
        block.scrollWidth > block.clientWidth + 1 &&
        block.clientWidth > 0
      ) {
        faults.push(`“${text}” overflows its box by ${block.scrollWidth - block.clientWidth} px`);
      }
    }

    visit(document.body, 'page');
    shown.forEach((one, index) => {
      for (const other of shown.slice(index + 1)) {
        if (one.layer !== other.layer) continue;
        const wide =
          Math.min(one.rect.right, other.rect.right) - Math.max(one.rect.left, other.rect.left);
        const high =
          Math.min(one.rect.bottom, other.rect.bottom) - Math.max(one.rect.top, other.rect.top);
        // Line boxes are higher than letters: neighbouring lines may share a few pixels of air.
        if (wide > 2 && high > 6) faults.push(`“${one.text}” lies over “${other.text}”`);
      }
    });
    if (document.documentElement.scrollWidth > innerWidth) {
      faults.push(`the page is ${document.documentElement.scrollWidth} px wide in ${innerWidth}`);
    }
    return [...new Set(faults)];
  });
}
