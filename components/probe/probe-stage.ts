import { LitElement, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { speedOfSound } from '../../dsp/level/speed-of-sound';
import type { Readings } from '../../src/reading/reading';
import type { Bench, BenchState } from '../../src/session/bench';
import type { ChannelLabel } from '../../src/system/channel';
import { BenchController } from '../bench-controller';
import '../charts/arrival-lanes';
import { sharedStyles } from '../theme/shared-styles';
import { stageStyles } from '../theme/stage-styles';
import { probeStyles } from './probe-styles';
import { probeTitle } from './probe-title';
import './rig-picker';
import './take-facts';
import { currentReadings, lanesOf } from './take-lanes';
import './take-notes';
import './take-progress';

/** Stage 3: play and capture. */
@customElement('ll-probe')
export class ProbeStage extends LitElement {
  static override styles = [sharedStyles, stageStyles, probeStyles];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) selected: ChannelLabel | null = null;
  private readonly follow = new BenchController(this);

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    const { title, lede } = probeTitle(state);
    const idle = state.activity.kind === 'idle';
    const readings = idle ? currentReadings(state) : null;
    const take = html`<section class="sheet ${idle ? 'rig' : 'running'}" aria-label="Take">
      ${
        idle
          ? html`<ll-rig-picker .bench=${this.bench}></ll-rig-picker>`
          : html`<ll-take-progress .bench=${this.bench}></ll-take-progress>`
      }
    </section>`;
    return html`<div class="lede">
        <h1>${title}</h1>
        <p>${lede}</p>
      </div>
      <div class="board">
        ${readings ? nothing : take}
        <section class="sheet lanes" aria-labelledby="arrivals">
          <h2 id="arrivals">
            Arrivals at the microphone${isSimulated(state) ? ' (simulated)' : ''}
          </h2>
          ${
            idle && !readings
              ? html`<p class="soft">
                  One lane a speaker, filled with its arrival as the take is read.
                </p>`
              : nothing
          }
          ${this.lanes(state)}
        </section>
        ${
          readings
            ? html`${this.notes(readings)}
                <section class="sheet facts-of-take" aria-labelledby="facts">
                  <h2 id="facts">This take</h2>
                  <ll-take-facts .readings=${readings}></ll-take-facts>
                </section>
                ${take}`
            : nothing
        }
      </div>`;
  }

  private lanes(state: BenchState) {
    const readings = currentReadings(state);
    const { referenceDistanceMetres, temperatureCelsius } =
      state.activity.kind === 'idle' && readings ? readings : state.document.conditions;
    return html`<ll-arrival-lanes
      .lanes=${lanesOf(state)}
      .referenceDistanceMetres=${referenceDistanceMetres}
      .speedOfSound=${speedOfSound(temperatureCelsius)}
      .selected=${this.selected}
    ></ll-arrival-lanes>`;
  }

  private notes({ channels }: Readings) {
    const noted = channels.some(
      ({ faults, notes, polarity }) => faults.length + notes.length > 0 || polarity === 'inverted',
    );
    if (!noted) return nothing;
    return html`<section class="sheet notes" aria-labelledby="notes">
      <h2 id="notes">What to know about this take</h2>
      <ll-take-notes .channels=${channels} .selected=${this.selected}></ll-take-notes>
    </section>`;
  }
}

function isSimulated(state: BenchState): boolean {
  if (state.activity.kind !== 'idle') return state.document.rig === 'practice';
  return currentReadings(state)?.simulated ?? state.document.rig === 'practice';
}

declare global {
  interface HTMLElementTagNameMap {
    'll-probe': ProbeStage;
  }
}
