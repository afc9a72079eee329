import { msg } from '@lit/localize';
import { LitElement, css, html, nothing, type PropertyValues } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench, BenchState } from '../../../src/session/bench';
import type { ChannelLabel } from '../../../src/system/channel';
import { BenchController } from '../../bench-controller';
import { groupColour } from '../../group-colour';
import { sharedStyles } from '../../theme/shared-styles';
import { stageStyles } from '../../theme/stage-styles';
import { isLoud } from '../level/exposure-words';
import './kept-readings';
import './noise-buttons';
import './noise-controls';
import './noise-readout';
import { forChannel, noiseWishes, requestOf } from './noise-wishes';
import './spectrum-chart';

/** The fifth sheet of Probe: live pink noise on one speaker, or listening to the processor's. */
@customElement('ll-noise-sheet')
export class NoiseSheet extends LitElement {
  static override styles = [
    sharedStyles,
    stageStyles,
    css`
      .intro {
        min-height: 4rem;
      }

      @container (min-width: 44rem) {
        .sheets {
          grid-template: 'live controls' auto 'kept controls' 1fr / minmax(0, 1fr) 17rem;
        }

        .live {
          grid-area: live;
        }

        .controls {
          grid-area: controls;
        }

        .kept {
          grid-area: kept;
        }

        .kept.alone {
          grid-column: 1 / 3;
        }
      }

      @container (min-width: 60rem) {
        .sheets {
          grid-template-columns: minmax(0, 1fr) 20rem;
        }
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) selected: ChannelLabel | null = null;
  private readonly follow = new BenchController(this);

  /** The plan is the navigator: the speaker picked on it is the one that sounds. */
  protected override willUpdate(changed: PropertyValues): void {
    const { bench, selected } = this;
    const { state } = this.follow;
    if (!changed.has('selected') || !selected || !bench || !state) return;
    const { activity } = state;
    const running = activity.kind === 'noise' ? activity.noise.request : null;
    if (running?.channel === selected) return;
    const wishes = forChannel(running ?? noiseWishes.of(bench), selected, state);
    noiseWishes.keep(bench, wishes);
    if (running && this.hasUpdated) bench.changeNoise(requestOf(wishes, state));
  }

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    const recording = state.document.rig === 'recording';
    return html`<div class="sheets">
      ${
        recording
          ? nothing
          : html`<section class="sheet live" aria-label=${msg('Spectrum')}>
                ${this.live(state)}
              </section>
              <section class="sheet controls" aria-label=${msg('Noise')}>
                <ll-noise-controls
                  .bench=${this.bench}
                  .selected=${this.selected}
                  @ll-wish=${() => this.requestUpdate()}
                ></ll-noise-controls>
              </section>`
      }
      <section class="sheet kept ${recording ? 'alone' : ''}" aria-labelledby="kept">
        <h2 id="kept">${msg('Kept readings')}</h2>
        <ll-kept-readings .bench=${this.bench}></ll-kept-readings>
      </section>
    </div>`;
  }

  private live(state: BenchState) {
    const { activity } = state;
    const buttons = html`<ll-noise-buttons
      .bench=${this.bench}
      .wishes=${this.bench && noiseWishes.of(this.bench)}
    ></ll-noise-buttons>`;
    if (activity.kind !== 'noise') {
      return html`${buttons}
        <p class="soft intro">
          ${msg('Level, spectrum in bands, its noise floor and its coherence appear here while noise plays. It begins at the test level: leave the room or wear hearing protection when it is loud.')}
        </p>`;
    }
    const { request, spectrum } = activity.noise;
    const group = state.layout.channels.find(({ label }) => label === request.channel)?.group;
    return html`${buttons}
      ${
        isLoud(state.exposure)
          ? html`<p class="signal">
              ${msg('This is more than ears should take for long: leave the room or wear hearing protection.')}
            </p>`
          : nothing
      }
      <ll-noise-readout .bench=${this.bench}></ll-noise-readout>
      <ll-spectrum-chart
        .spectrum=${spectrum}
        .bandsPerOctave=${request.bandsPerOctave}
        .colour=${group ? groupColour(group) : 'var(--ink)'}
        .channel=${request.channel}
        .range=${request.highHz <= 400 ? 'low' : 'full'}
      ></ll-spectrum-chart>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-noise-sheet': NoiseSheet;
  }
}
