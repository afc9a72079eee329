import { LitElement, css, html, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { sharedStyles } from '../theme/shared-styles';

/** One number large enough to be read across the room, with its name and unit. */
@customElement('ll-big-number')
export class BigNumber extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
      }

      .value {
        display: flex;
        align-items: baseline;
        gap: 0.15em;
        font-size: clamp(2rem, 1.2rem + 2.2vw, 3rem);
        font-weight: 700;
        line-height: 1.1;
        font-variant-numeric: tabular-nums;
        white-space: nowrap;
      }

      .value.huge {
        font-size: clamp(3rem, 1.6rem + 4.4vw, 5.5rem);
        line-height: 1.2;
      }

      .unit {
        font-family: var(--face);
        font-size: max(var(--text), 0.36em);
        font-weight: 400;
      }
    `,
  ];

  @property() label = '';
  @property() value = '–';
  @property() unit = '';
  /** For the one number of a view that must be read from two metres. */
  @property({ type: Boolean }) huge = false;

  protected override render(): TemplateResult {
    return html`<p class="soft small">${this.label}</p>
      <p class="value ${this.huge ? 'huge' : ''}">
        <span>${this.value}</span><span class="unit">${this.unit}</span>
      </p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-big-number': BigNumber;
  }
}
