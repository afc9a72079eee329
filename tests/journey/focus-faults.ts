import type { Page } from 'playwright-core';

/** More stops than any screen has. */
const most = 400;

/** What a stop of the Tab key is like. */
interface Stop {
  readonly name: string;
  /** Where the focus came before, or nowhere. */
  readonly seen: boolean;
  readonly faults: readonly string[];
}

/**
 * What is wrong with the screen for who has only the Tab key, one sentence a fault: a stop without a
 * mark of its focus, a stop that lies under the rail or the strip, a control that Tab never reaches.
 */
export async function focusFaults(page: Page): Promise<string[]> {
  await page.evaluate(begin);
  const faults: string[] = [];
  for (let pressed = 0; pressed < most; pressed++) {
    await page.keyboard.press('Tab');
    const stop = await page.evaluate(look);
    if (stop.seen) return [...faults, ...(await page.evaluate(missed))];
    faults.push(...stop.faults);
  }
  return [...faults, `Tab comes to no end after ${most} stops`];
}

/** What the walk keeps in the page, between one press and the next. */
interface Walk {
  readonly visited: Set<Element>;
  readonly atStart: Set<Element>;
  controls(): Element[];
}

function begin(): void {
  const controls = (): Element[] => {
    const found: Element[] = [];
    const visit = (root: Element | ShadowRoot | Document): void => {
      for (const one of root.children) {
        const inside = one.matches(
          'a[href], button, input, select, textarea, summary, [tabindex="0"]',
        );
        if (inside && !one.matches(':disabled, [hidden]') && one.checkVisibility()) found.push(one);
        if (one.shadowRoot) visit(one.shadowRoot);
        visit(one);
      }
    };
    const dialog = document.querySelector('ll-app')?.shadowRoot?.querySelector('dialog[open]');
    visit(dialog ?? document);
    return found;
  };
  let active: Element | null = document.activeElement;
  while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
  if (active instanceof HTMLElement || active instanceof SVGElement) active.blur();
  // A click where nothing is: the next Tab begins at the top of the page.
  getSelection()?.removeAllRanges();
  getSelection()?.collapse(document.body, 0);
  const walk: Walk = { visited: new Set(), atStart: new Set(controls()), controls };
  Object.assign(window, { walk });
}

function look(): Stop {
  const { walk } = window as unknown as { walk: Walk };
  let at: Element | null = document.activeElement;
  while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
  if (!at || at === document.body) return { name: '', seen: walk.visited.size > 0, faults: [] };
  const label = at instanceof HTMLInputElement ? (at.labels?.[0] ?? null) : null;
  const words = at.getAttribute('aria-label') ?? label?.textContent ?? at.textContent ?? '';
  const name = `${at.localName} “${words.replace(/\s+/g, ' ').trim()}”`;
  const seen = walk.visited.has(at);
  walk.visited.add(at);

  const outlined = (one: Element): boolean => {
    const { outlineStyle, outlineWidth, opacity } = getComputedStyle(one);
    return outlineStyle !== 'none' && parseFloat(outlineWidth) >= 1 && opacity !== '0';
  };
  const halo = at.querySelector('.halo');
  const marked =
    outlined(at) ||
    (label !== null && outlined(label)) ||
    (halo !== null && getComputedStyle(halo).stroke !== 'none');

  const contains = (outer: Element, inner: Element | null): boolean => {
    for (let one: Element | null = inner; one; ) {
      if (one === outer) return true;
      const root: Node = one.getRootNode();
      one = one.parentElement ?? (root instanceof ShadowRoot ? root.host : null);
    }
    return false;
  };
  const deepestAt = (x: number, y: number): Element | null => {
    let hit = document.elementFromPoint(x, y);
    for (;;) {
      const inner: Element | null = hit?.shadowRoot?.elementFromPoint(x, y) ?? null;
      if (!inner || inner === hit) return hit;
      hit = inner;
    }
  };
  const box = (getComputedStyle(at).opacity === '0' && label ? label : at).getBoundingClientRect();
  const shares = [0.05, 0.5, 0.95];
  const free = shares.some((across) =>
    shares.some((down) => {
      const hit = deepestAt(box.left + across * box.width, box.top + down * box.height);
      if (hit === null) return false;
      const layer = ['ll-rail', 'll-strip']
        .flatMap((tag) => [...(document.querySelector('ll-app')?.shadowRoot?.querySelectorAll(tag) ?? [])])
        .find((one) => contains(one, hit));
      return layer === undefined || contains(layer, at);
    }),
  );
  const faults: string[] = [];
  if (!marked) faults.push(`${name} shows no focus`);
  if (!free) faults.push(`${name} has the focus and is out of sight`);
  return { name, seen, faults };
}

function missed(): string[] {
  const { walk } = window as unknown as { walk: Walk };
  const radios = (one: Element): boolean =>
    one instanceof HTMLInputElement &&
    one.type === 'radio' &&
    [...walk.visited].some(
      (other) =>
        other instanceof HTMLInputElement &&
        other.name === one.name &&
        other.getRootNode() === one.getRootNode(),
    );
  return walk
    .controls()
    .filter((one) => walk.atStart.has(one) && !walk.visited.has(one) && !radios(one))
    .map((one) => {
      const words = one.getAttribute('aria-label') ?? one.textContent ?? '';
      return `Tab never reaches ${one.localName} “${words.replace(/\s+/g, ' ').trim()}”`;
    });
}
