import type { LitElement } from 'lit';
import { afterEach } from 'vitest';

afterEach(() => document.body.replaceChildren());

/** Puts an element with its properties into a box of a width and waits until it has drawn there. */
export async function mount<Name extends keyof HTMLElementTagNameMap>(
  name: Name,
  properties: Partial<HTMLElementTagNameMap[Name]>,
  width = 800,
): Promise<HTMLElementTagNameMap[Name] & LitElement> {
  const box = document.createElement('div');
  box.style.width = `${width}px`;
  const element = Object.assign(document.createElement(name), properties);
  box.append(element);
  document.body.append(box);
  await document.fonts.ready;
  await settle(element as HTMLElement);
  return element as HTMLElementTagNameMap[Name] & LitElement;
}

/** Waits until an element and all elements in its shadow have drawn, also after a resize. */
export async function settle(element: HTMLElement): Promise<void> {
  for (let round = 0; round < 3; round++) {
    await new Promise(requestAnimationFrame);
    await Promise.all(
      deep(element).map((one) => ('updateComplete' in one ? one.updateComplete : undefined)),
    );
  }
}

/** The element and everything in its shadow, all the way down. */
export function deep(root: Element): Element[] {
  const inside = [...root.children, ...(root.shadowRoot?.children ?? [])];
  return [root, ...inside.flatMap(deep)];
}

/** All elements that match, through every shadow. */
export function findAll<Found extends Element = HTMLElement>(
  root: Element,
  selector: string,
): Found[] {
  return deep(root).filter((one): one is Found => one.matches(selector));
}

/** The first element that matches, through every shadow. */
export function find<Found extends Element = HTMLElement>(root: Element, selector: string): Found {
  const [found] = findAll<Found>(root, selector);
  if (!found) throw new RangeError(`nothing matches ${selector}`);
  return found;
}

/** Everything a person reads in the element, in its order, in one line, with plain spaces. */
export function textOf(root: Element): string {
  const read = (node: Node): string => {
    if (node.nodeType === Node.TEXT_NODE) return node.textContent ?? '';
    if (!(node instanceof Element) || ['STYLE', 'SCRIPT'].includes(node.tagName)) return '';
    return [...(node.shadowRoot?.childNodes ?? node.childNodes)].map(read).join(' ');
  };
  return plain(read(root));
}

/** A text with every run of white space, thin spaces too, as one plain space. */
export function plain(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}

/** Attributes and texts that hold what is no number; empty when all is well. */
export function notNumbers(root: Element): string[] {
  return deep(root).flatMap((one) => {
    const attributes = [...one.attributes].map(({ name, value }) => `${name}="${value}"`);
    const texts = [...one.childNodes]
      .filter((node) => node.nodeType === Node.TEXT_NODE)
      .map((node) => node.textContent ?? '');
    return [...attributes, ...texts].filter((text) => /NaN|undefined|Infinity|\bnull\b/.test(text));
  });
}

/** Pairs of texts of a drawing that lie on each other, by what they say. */
export function overlappingTexts(root: Element): string[] {
  const texts = findAll<SVGTextElement>(root, 'svg text')
    .filter((text) => (text.textContent ?? '').trim() !== '')
    .map((text) => ({ text: plain(text.textContent ?? ''), box: text.getBoundingClientRect() }));
  return texts.flatMap((one, index) =>
    texts.slice(index + 1).flatMap((other) => {
      const wide =
        Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left);
      const high =
        Math.min(one.box.bottom, other.box.bottom) - Math.max(one.box.top, other.box.top);
      return wide > 1 && high > 4 ? [`${one.text} on ${other.text}`] : [];
    }),
  );
}
