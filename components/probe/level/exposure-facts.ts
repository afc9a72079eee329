import { msg } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench } from '../../../src/session/bench';
import { BenchController } from '../../bench-controller';
import { hearingLimit } from '../../hearing-limit';
import { sharedStyles } from '../../theme/shared-styles';
import { exposureSentence, isLoud } from './exposure-words';

/** The sound taken so far today, against what ears should take, with the advice. */
@customElement('ll-exposure-facts')
export class ExposureFacts extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-2);
      }

      svg {
        display: block;
        width: 100%;
        height: 0.75rem;
      }

      .track {
        fill: var(--track);
      }

      .taken {
        fill: var(--ok);
      }

      .taken.loud {
        fill: var(--signal);
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    const { exposure } = state;
    const loud = isLoud(exposure);
    const percent = Math.round(Math.min(1, Math.max(0, exposure.dose ?? 0)) * 1000) / 10;
    return html`<p class=${loud ? 'signal' : ''}>${exposureSentence(exposure)}</p>
      ${
        state.document.rig === 'practice'
          ? html`<p class="soft small">
              ${msg('The practice room makes no sound, so it adds nothing.')}
            </p>`
          : nothing
      }
      ${
        exposure.dose === null
          ? nothing
          : html`<svg viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
              <rect class="track" width="100" height="10"></rect>
              <rect class="taken ${loud ? 'loud' : ''}" width=${percent} height="10"></rect>
            </svg>`
      }
      <p class="soft small">${hearingLimit()}</p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-exposure-facts': ExposureFacts;
  }
}
