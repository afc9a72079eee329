import { ReactiveElement } from 'lit';

/**
 * Draws every element under a root anew, through all shadow roots: what they say depends on more
 * than their properties once the locale changes. What is open, typed or running in them stays.
 */
export function renderAnew(root: ParentNode): void {
  for (const element of root.querySelectorAll('*')) {
    if (element instanceof ReactiveElement) element.requestUpdate();
    if (element.shadowRoot) renderAnew(element.shadowRoot);
  }
}
