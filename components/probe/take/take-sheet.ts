import { msg, str } from '@lit/localize';
import { LitElement, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { speedOfSound } from '../../../dsp/level/speed-of-sound';
import type { Readings } from '../../../src/reading/reading';
import type { Bench, BenchState } from '../../../src/session/bench';
import { soundLevelHere } from '../../../src/session/run/sound-level-here';
import type { ChannelLabel } from '../../../src/system/channel';
import { nothingInForce } from '../../../src/system/declared-settings';
import { BenchController } from '../../bench-controller';
import '../../charts/arrival-lanes';
import type { Lane } from '../../charts/lane';
import { sharedStyles } from '../../theme/shared-styles';
import './geometry-findings';
import './noise-findings';
import { joinedTakes } from './positions';
import './position-picker';
import './repeat-panel';
import './rig-panel';
import './rolloff-findings';
import { takeBoardStyles } from './take-board-styles';
import './take-facts';
import { currentReadings, lanesKey, lanesOf } from './take-lanes';
import './take-notes';
import './take-progress';
import './take-run';
import './take-settings';

/** The fourth sheet of Probe: the take, its arrivals, what it found and what to repeat. */
@customElement('ll-take-sheet')
export class TakeSheet extends LitElement {
  static override styles = [sharedStyles, takeBoardStyles];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) selected: ChannelLabel | null = null;
  private readonly follow = new BenchController(this);
  private drawn: { readonly key: readonly unknown[]; readonly lanes: readonly Lane[] } | null =
    null;

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    const { kind } = state.activity;
    const running = kind === 'playing' || kind === 'reading';
    const readings = running ? null : currentReadings(state);
    const rig = html`<section class="sheet rig" aria-label=${msg('Take')}>
      <ll-take-run .bench=${this.bench}></ll-take-run>
      <ll-rig-panel .bench=${this.bench}></ll-rig-panel>
      <ll-take-settings .bench=${this.bench}></ll-take-settings>
      <ll-position-picker .bench=${this.bench} .selected=${this.selected}></ll-position-picker>
    </section>`;
    return html`${
        running
          ? html`<section class="sheet running" aria-label=${msg('Take')}>
              <ll-take-progress .bench=${this.bench}></ll-take-progress>
            </section>`
          : nothing
      }
      ${
        !running && state.toRepeat.length > 0
          ? html`<ll-repeat-panel .bench=${this.bench}></ll-repeat-panel>`
          : nothing
      }
      <div class="board ${running ? 'alone' : ''}">
        ${!running && !readings ? rig : nothing}
        <section class="sheet lanes" aria-labelledby="arrivals">
          <h2 id="arrivals">
            ${msg(str`Arrivals at the microphone${isSimulated(state) ? msg(' (simulated)') : ''}`)}
          </h2>
          ${
            !running && !readings
              ? html`<p class="soft">
                  ${msg('One lane a speaker, filled with its arrival as the take is read.')}
                </p>`
              : nothing
          }
          ${this.lanes(state)}
        </section>
        ${readings ? this.findings(state, readings, rig) : nothing}
      </div>`;
  }

  private findings(state: BenchState, readings: Readings, rig: unknown) {
    return html`${this.notes(readings)}
      <div class="checks">
        ${
          state.document.position.kind === 'close'
            ? nothing
            : html`<ll-geometry-findings
                .readings=${readings}
                .layout=${state.layout}
                .system=${state.document.system}
                .inForce=${readings.inForce ?? nothingInForce}
              ></ll-geometry-findings>`
        }
        <ll-rolloff-findings .bench=${this.bench}></ll-rolloff-findings>
        <ll-noise-findings
          .readings=${readings}
          .offsetDb=${soundLevelHere(state.document)?.offsetDb ?? null}
        ></ll-noise-findings>
      </div>
      <section class="sheet facts-of-take" aria-labelledby="facts">
        <h2 id="facts">${msg('This take')}</h2>
        <ll-take-facts
          .readings=${readings}
          .position=${state.document.position.name}
          .takes=${joinedTakes(state)}
        ></ll-take-facts>
      </section>
      ${rig}`;
  }

  private lanes(state: BenchState) {
    const { referenceDistanceMetres, temperatureCelsius } =
      state.activity.kind === 'idle'
        ? (currentReadings(state) ?? state.document.conditions)
        : state.document.conditions;
    return html`<ll-arrival-lanes
      .lanes=${this.keptLanes(state)}
      .referenceDistanceMetres=${referenceDistanceMetres}
      .speedOfSound=${speedOfSound(temperatureCelsius)}
      .selected=${this.selected}
    ></ll-arrival-lanes>`;
  }

  /** The same lanes as long as nothing they show has changed: the level moves many times a second. */
  private keptLanes(state: BenchState): readonly Lane[] {
    const key = lanesKey(state);
    if (!this.drawn || !key.every((value, index) => value === this.drawn?.key[index])) {
      this.drawn = { key, lanes: lanesOf(state) };
    }
    return this.drawn.lanes;
  }

  private notes({ channels }: Readings) {
    const noted = channels.some(
      ({ faults, notes, polarity }) => faults.length + notes.length > 0 || polarity === 'inverted',
    );
    if (!noted) return nothing;
    return html`<section class="sheet notes" aria-labelledby="notes">
      <h2 id="notes">${msg('What to know about this take')}</h2>
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
    'll-take-sheet': TakeSheet;
  }
}
