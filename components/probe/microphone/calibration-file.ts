import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { MicrophoneCalibration } from '../../../src/microphone/calibration';
import type { Bench } from '../../../src/session/bench';
import { BenchController } from '../../bench-controller';
import { hzText } from '../../../src/locale/number-text';
import { buttonStyles } from '../../controls/button-styles';
import '../../controls/file-drop';
import { sharedStyles } from '../../theme/shared-styles';
import './calibration-curve';
import { changeMicrophone } from './change-microphone';

/** The microphone's calibration file: dropped or chosen, shown as a curve, taken away again. */
@customElement('ll-calibration-file')
export class CalibrationFile extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-3);
      }

      .facts dd {
        overflow-wrap: anywhere;
      }

      .ghost {
        justify-self: start;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    const busy = state.activity.kind !== 'idle';
    const { calibration } = state.document.microphone;
    return html`${
        calibration
          ? this.facts(calibration, busy)
          : html`<p>
              ${msg('No file: readings hold the microphone’s own response as well, mostly at the top and the bottom of the range.')}
            </p>`
      }
      <ll-file-drop
        label=${calibration ? msg('Choose another file') : msg('Choose the calibration file')}
        name=${msg('Calibration file of the microphone')}
        hint=${msg('or drop it here: rows of frequency in Hz, dB and, if known, phase in degrees')}
        ?disabled=${busy}
        @ll-file=${(event: CustomEvent<File>) => void this.bench?.importCalibration(event.detail)}
      ></ll-file-drop>`;
  }

  private facts(calibration: MicrophoneCalibration, busy: boolean) {
    const { name, hz, phaseDegrees } = calibration;
    return html`<dl class="facts">
        <dt>${msg('File')}</dt>
        <dd>${name}</dd>
        <dt>${msg('From')}</dt>
        <dd class="num">${msg(str`${hzText(hz[0])} to ${hzText(hz.at(-1))}`)}</dd>
        <dt>${msg('Rows')}</dt>
        <dd class="num">${hz.length}</dd>
        <dt>${msg('Phase')}</dt>
        <dd>${phaseDegrees ? msg('from the file') : msg('not given: minimum phase is taken')}</dd>
      </dl>
      <ll-calibration-curve .calibration=${calibration}></ll-calibration-curve>
      <button
        class="ghost"
        ?disabled=${busy}
        @click=${() => changeMicrophone(this.bench, msg('Remove calibration file'), { calibration: null })}
      >
        ${msg('Remove this file')}
      </button>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-calibration-file': CalibrationFile;
  }
}
