import { msg, str } from '@lit/localize';
import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { NoiseState } from '../../../src/noise/noise-state';
import type { Bench } from '../../../src/session/bench';
import { BenchController } from '../../bench-controller';
import { CalmElement } from '../../calm-element';
import { durationText, hzText, numberText } from '../../../src/locale/number-text';
import '../../controls/big-number';
import '../../controls/progress-bar';
import { soundLevelUnit } from '../../strip/strip-words';
import { sharedStyles } from '../../theme/shared-styles';

/** Warnings shown at once; older ones make room. */
const mostWarnings = 4;

/** Level of the noise, to be read from the seat; time left of the average; what disturbs it. */
@customElement('ll-noise-readout')
export class NoiseReadout extends CalmElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-3);
      }

      .numbers {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-3) var(--space-6);
        align-items: end;
      }

      ul {
        display: grid;
        gap: var(--space-1);
        padding-left: 1.1rem;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  protected override readonly calmMilliseconds = 200;
  private readonly follow = new BenchController(this);

  override render() {
    const activity = this.follow.state?.activity;
    if (activity?.kind !== 'noise') return nothing;
    const { noise } = activity;
    const { lowHz, highHz, averagingSeconds } = noise.request;
    const { soundLevel } = noise;
    const loud = soundLevel?.calibrated === true;
    return html`<div class="numbers">
        ${
          loud
            ? html`<ll-big-number
                huge
                label=${msg('Sound level at the microphone')}
                value=${numberText(soundLevel.db, 1)}
                unit=${soundLevelUnit(soundLevel)}
              ></ll-big-number>`
            : nothing
        }
        <ll-big-number
          ?huge=${!loud}
          label=${msg(str`Level, ${hzText(lowHz)} to ${hzText(highHz)}`)}
          value=${numberText(noise.bandLevelDb, 1)}
          unit="dBFS"
        ></ll-big-number>
        <ll-big-number
          label=${noise.complete ? msg('Average') : msg('Left of the average')}
          value=${noise.complete ? 'complete' : durationText(noise.secondsLeft)}
        ></ll-big-number>
      </div>
      <ll-progress
        label=${msg('Average')}
        .value=${averagingSeconds > 0 ? noise.seconds / averagingSeconds : 0}
      ></ll-progress>
      ${warnings(noise)}`;
  }
}

function warnings({ warnings: all }: NoiseState) {
  if (all.length === 0) return nothing;
  const shown = [...new Set(all)].slice(-mostWarnings);
  return html`<ul class="signal" role="status">
    ${shown.map((warning) => html`<li>${warning}</li>`)}
  </ul>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-noise-readout': NoiseReadout;
  }
}
