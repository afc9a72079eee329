import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench } from '../../../src/session/bench';
import { BenchController } from '../../bench-controller';
import { buttonStyles } from '../../controls/button-styles';
import { sharedStyles } from '../../theme/shared-styles';
import { requestOf, type NoiseWishes } from './noise-wishes';

/** Starts and stops the noise or the listening, and keeps what it reads. */
@customElement('ll-noise-buttons')
export class NoiseButtons extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      :host {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-2);
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) wishes: NoiseWishes | null = null;
  private readonly follow = new BenchController(this);

  override render() {
    const { state } = this.follow;
    const { bench, wishes } = this;
    if (!state || !bench || !wishes) return nothing;
    if (state.activity.kind === 'noise') {
      const { request, reading } = state.activity.noise;
      return html`<button class="go" @click=${() => bench.stop()}>
          ${request.kind === 'listening' ? msg('Stop listening') : msg('Stop the noise')}
        </button>
        <button class="ghost" ?disabled=${reading === null} @click=${() => bench.keepNoise()}>
          ${msg('Keep this reading')}
        </button>`;
    }
    const request = requestOf(wishes, state);
    return html`<button
      class="go"
      ?disabled=${state.activity.kind !== 'idle'}
      @click=${() => void bench.startNoise(request)}
    >
      ${
        request.kind === 'listening'
          ? msg(str`Listen to ${request.channel}`)
          : msg(str`Play noise on ${request.channel}`)
      }
    </button>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-noise-buttons': NoiseButtons;
  }
}
