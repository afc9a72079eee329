import { LitElement, css, html, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { sharedStyles } from '../theme/shared-styles';

/** How far long work has come, 0 to 1, with its name for assistive technology. */
@customElement('ll-progress')
export class ProgressBar extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
      }

      svg {
        display: block;
        width: 100%;
        height: 0.625rem;
      }

      .track {
        fill: var(--track);
      }

      .done {
        fill: var(--signal);
      }
    `,
  ];

  @property() label = '';
  @property({ type: Number }) value = 0;

  protected override render(): TemplateResult {
    const percent = Math.round(Math.min(1, Math.max(0, this.value)) * 1000) / 10;
    return html`<div
      role="progressbar"
      aria-label=${this.label}
      aria-valuemin="0"
      aria-valuemax="100"
      aria-valuenow=${Math.round(percent)}
    >
      <svg viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
        <rect class="track" width="100" height="10"></rect>
        <rect class="done" width=${percent} height="10"></rect>
      </svg>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-progress': ProgressBar;
  }
}
