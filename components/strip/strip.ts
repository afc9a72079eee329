import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench } from '../../src/session/bench';
import { BenchController } from '../bench-controller';
import { durationText } from '../charts/number-text';
import { buttonStyles } from '../controls/button-styles';
import { isSimulated } from '../simulated';
import { sharedStyles } from '../theme/shared-styles';
import './mic-meter';
import { savedInWords, secondsLeft, soundInWords } from './strip-words';
import { stripStyles } from './strip-styles';

/** The strip at the foot of every screen: microphone, state of sound, time left, Stop. */
@customElement('ll-strip')
export class Strip extends LitElement {
  static override styles = [sharedStyles, buttonStyles, stripStyles];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);

  protected override render(): TemplateResult | typeof nothing {
    const { bench } = this;
    const { state } = this.follow;
    if (!bench || !state) return nothing;
    const left = secondsLeft(state);
    const busy = state.activity.kind !== 'idle';
    return html`<footer>
      <ll-mic-meter .level=${state.mic}></ll-mic-meter>
      <div class="sound">
        ${isSimulated(state) ? html`<span class="simulated">Simulated</span>` : nothing}
        <span role="status" class=${busy ? 'busy' : 'soft'}>${soundInWords(state)}</span>
        ${left === null ? nothing : html`<span class="left">${durationText(left)} left</span>`}
      </div>
      <div class="kept ${state.saved}">
        ${
          state.abilities
            ? html`<span class="rig"
                >${state.abilities.name}, ${state.abilities.sampleRate / 1000} kHz</span
              >`
            : nothing
        }
        <span class=${state.saved === 'failed' || state.saved === 'elsewhere' ? 'signal' : ''}
          >${savedInWords(state.saved)}</span
        >
      </div>
      <button
        class="stop ${state.activity.kind === 'playing' ? 'sounding' : ''}"
        @click=${() => bench.stop()}
      >
        Stop all sound <kbd>Esc</kbd>
      </button>
    </footer>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-strip': Strip;
  }
}
