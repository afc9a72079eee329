/** The first element that matches, through all open shadow roots; a selector may span them. */
export function findDeep(root: Element | ShadowRoot, selector: string): Element {
  const found = search(root, selector.split(' '));
  if (!found) throw new RangeError(`nothing on screen matches ${selector}`);
  return found;
}

function search(root: Element | ShadowRoot, steps: readonly string[]): Element | null {
  const [step, ...rest] = steps;
  if (step === undefined) return null;
  for (const element of everyElement(root)) {
    if (!element.matches(step)) continue;
    if (rest.length === 0) return element;
    const inner = search(element, rest);
    if (inner) return inner;
  }
  return null;
}

/** Every element below, in the order they are drawn, through all open shadow roots. */
export function* everyElement(root: Element | ShadowRoot): Generator<Element> {
  const children = [
    ...(root instanceof Element && root.shadowRoot ? root.shadowRoot.children : root.children),
  ];
  for (const child of children) {
    yield child;
    yield* everyElement(child);
  }
}

/** All text on screen, with single spaces. */
export function deepText(root: Element): string {
  const parts: string[] = [];
  for (const element of everyElement(root)) {
    if (element.localName === 'style') continue;
    for (const node of element.childNodes) {
      if (node.nodeType === Node.TEXT_NODE) parts.push(node.nodeValue ?? '');
    }
  }
  return parts.join(' ').replace(/\s+/g, ' ').trim();
}
