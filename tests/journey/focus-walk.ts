// What runs in the page while Tab walks through it; each function stands alone.

/** What a stop of the Tab key is like. */
export interface Stop {
  /** Where the focus was before. */
  readonly seen: boolean;
  readonly faults: readonly string[];
}

/** What the walk keeps in the page, between one press and the next. */
interface Walk {
  readonly visited: Set<Element>;
  readonly atStart: Set<Element>;
  /** How often the focus left the last control. */
  ends: number;
  controls(): Element[];
}

/** In the page: notes what Tab should reach. */
export function beginWalk(): void {
  const controls = (): Element[] => {
    const found: Element[] = [];
    const visit = (root: Element | ShadowRoot | Document): void => {
      for (const one of root.children) {
        const inside = one.matches(
          'a[href], button, input, select, textarea, summary, [tabindex="0"]',
        );
        const works = inside && !one.matches(':disabled, [hidden]');
        if (works && one.checkVisibility({ visibilityProperty: true })) found.push(one);
        if (one.shadowRoot) visit(one.shadowRoot);
        visit(one);
      }
    };
    const dialog = document.querySelector('ll-app')?.shadowRoot?.querySelector('dialog[open]');
    visit(dialog ?? document);
    return found;
  };
  const walk: Walk = { visited: new Set(), atStart: new Set(controls()), ends: 0, controls };
  Object.assign(window, { walk });
}

/** In the page: judges what has the focus now. */
export function lookAtStop(): Stop {
  const { walk } = window as unknown as { walk: Walk };
  let at: Element | null = document.activeElement;
  while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
  // The walk may begin anywhere: past the last control it goes on with the first.
  if (!at || at === document.body) return { seen: ++walk.ends > 1, faults: [] };
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
    for (let one: Element | null = inner; one;) {
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
  const shell = document.querySelector('ll-app')?.shadowRoot;
  const layers = [...(shell?.querySelectorAll('ll-rail, ll-strip') ?? [])];
  const shares = [0.05, 0.5, 0.95];
  const free = shares.some((across) =>
    shares.some((down) => {
      const hit = deepestAt(box.left + across * box.width, box.top + down * box.height);
      if (hit === null) return false;
      const layer = layers.find((one) => contains(one, hit));
      return layer === undefined || contains(layer, at);
    }),
  );
  const faults: string[] = [];
  if (!marked) faults.push(`${name} shows no focus`);
  if (!free) faults.push(`${name} has the focus and is out of sight`);
  return { seen, faults };
}

/** In the page: what can be worked, was there all along and never had the focus. */
export function missedByWalk(): string[] {
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
