import type { ReactiveController, ReactiveControllerHost } from 'lit';

interface RevealHost extends ReactiveControllerHost {
  readonly renderRoot: HTMLElement | DocumentFragment;
}

/**
 * Brings into view and focuses what the third part of the address names, such as the line
 * "distance SiL" of #propose/list/distance%20SiL: the element of the host whose `data-place` is it.
 * Once for each address, so that whoever has moved on is not pulled back.
 */
export class RevealController implements ReactiveController {
  private readonly host: RevealHost;
  private readonly sheet: string;
  private shown = '';

  /** `sheet` is the address of the host's sheet, such as #propose/list. */
  constructor(host: RevealHost, sheet: string) {
    this.host = host;
    this.sheet = sheet;
    host.addController(this);
  }

  hostConnected(): void {
    window.addEventListener('hashchange', this.moved);
  }

  hostDisconnected(): void {
    window.removeEventListener('hashchange', this.moved);
    this.shown = '';
  }

  hostUpdated(): void {
    const { hash } = location;
    if (hash === this.shown || !hash.startsWith(`${this.sheet}/`)) return;
    const place = decodePlace(hash.slice(this.sheet.length + 1));
    const found = this.host.renderRoot.querySelector(`[data-place="${CSS.escape(place)}"]`);
    if (!(found instanceof HTMLElement)) return;
    this.shown = hash;
    // What lies inside has not drawn yet.
    requestAnimationFrame(() => reveal(found));
  }

  private readonly moved = (): void => {
    if (location.hash !== this.shown) this.shown = '';
    this.host.requestUpdate();
  };
}

/** The address of a place on a sheet. */
export function placeAddress(sheet: string, place: string): string {
  return `${sheet}/${encodeURIComponent(place)}`;
}

function decodePlace(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

function reveal(place: HTMLElement): void {
  const target = firstFocusable(place) ?? place;
  if (target === place) place.tabIndex = -1;
  place.scrollIntoView({ block: 'center' });
  target.focus({ preventScroll: true });
  place.toggleAttribute('data-revealed', true);
  place.addEventListener('focusout', () => place.toggleAttribute('data-revealed', false), {
    once: true,
  });
}

/** The first thing in an element that takes the focus, through open shadow roots. */
function firstFocusable(root: Element | ShadowRoot): HTMLElement | null {
  for (const child of root.children) {
    if (child instanceof HTMLElement && child.matches(focusable)) return child;
    const inside = (child.shadowRoot && firstFocusable(child.shadowRoot)) ?? firstFocusable(child);
    if (inside) return inside;
  }
  return null;
}

const focusable = 'input:enabled, select:enabled, button:enabled, a[href], summary';
