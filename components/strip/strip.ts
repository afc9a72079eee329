import { msg, str } from '@lit/localize';
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench } from '../../src/session/bench';
import { BenchController } from '../bench-controller';
import { dbText, durationText } from '../../src/locale/number-text';
import { buttonStyles } from '../controls/button-styles';
import { isSimulated } from '../simulated';
import { sharedStyles } from '../theme/shared-styles';
import './level-reading';
import './mic-meter';
import { isSounding, partInWords, savedInWords, secondsLeft, soundInWords } from './strip-words';
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
    const part = partInWords(state);
    const level = state.soundLevel?.calibrated ? state.soundLevel : null;
    return html`<footer>
      <ll-mic-meter .level=${state.mic}></ll-mic-meter>
      <div class="sound">
        ${isSimulated(state) ? html`<span class="simulated">${msg('Simulated')}</span>` : nothing}
        <span role="status" class=${busy ? 'busy' : 'soft'}>${soundInWords(state)}</span>
        ${part === null ? nothing : html`<span>${part}</span>`}
        ${left === null ? nothing : html`<span class="left">${msg(str`${durationText(left)} left`)}</span>`}
        ${
          state.activity.kind === 'climbing' && state.activity.climb.marginDb !== null
            ? html`<span class="left margin"
                >${msg(str`${dbText(state.activity.climb.marginDb, 0)} over the noise`)}</span
              >`
            : nothing
        }
        ${
          state.activity.kind === 'waiting'
            ? html`<a href="#probe/take">${msg('See what to do')}</a>`
            : nothing
        }
        ${
          level
            ? html`<ll-level-reading .bench=${bench} .level=${level}></ll-level-reading>`
            : nothing
        }
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
      <button class="stop ${isSounding(state) ? 'sounding' : ''}" @click=${() => bench.stop()}>
        ${msg(html`Stop all sound <kbd>Esc</kbd>`)}
      </button>
    </footer>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-strip': Strip;
  }
}
