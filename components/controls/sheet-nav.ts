import { msg } from '@lit/localize';
import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { sharedStyles } from '../theme/shared-styles';

/** One sheet of a stage: its name and the address that shows it. */
export interface SheetLink {
  readonly id: string;
  readonly name: string;
  readonly address: string;
}

/** The sheets of a stage as index tabs; the one on which something runs carries a mark. */
@customElement('ll-sheet-nav')
export class SheetNav extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
      }

      nav {
        display: flex;
        border-bottom: var(--line) solid var(--edge);
      }

      a {
        display: inline-flex;
        align-items: center;
        justify-content: center;
        gap: 0.35rem;
        min-height: var(--target);
        padding: 0 var(--space-4);
        margin-bottom: -1px;
        border: var(--line) solid transparent;
        border-radius: var(--radius) var(--radius) 0 0;
        color: var(--soft);
        text-decoration: none;
        white-space: nowrap;
      }

      a:hover {
        color: var(--ink);
      }

      a[aria-current] {
        border-color: var(--edge);
        border-bottom-color: var(--sheet);
        background: var(--sheet);
        color: var(--ink);
        font-weight: 700;
      }

      .runs {
        width: 0.5rem;
        height: 0.5rem;
        border-radius: 50%;
        background: var(--signal);
      }

      :focus-visible {
        outline-offset: -3px;
      }

      @media (max-width: 30rem) {
        nav {
          flex-wrap: wrap;
        }

        a {
          flex: 1 1 auto;
          padding: 0 var(--space-1);
          font-size: var(--text-small);
        }
      }
    `,
  ];

  /** Of which stage, for assistive technology. */
  @property() label = '';
  @property({ attribute: false }) sheets: readonly SheetLink[] = [];
  @property({ attribute: false }) here = '';
  @property({ attribute: false }) running: string | null = null;

  protected override render(): TemplateResult {
    return html`<nav aria-label=${this.label}>
      ${this.sheets.map(
        ({ id, name, address }) =>
          html`<a href=${address} aria-current=${id === this.here ? 'page' : nothing}>
            ${name}
            ${
              id === this.running
                ? html`<span class="runs" aria-hidden="true"></span
                    ><span class="unseen">${msg(', running')}</span>`
                : nothing
            }
          </a>`,
      )}
    </nav>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-sheet-nav': SheetNav;
  }
}
