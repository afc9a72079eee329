import { msg } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Bench } from '../../../src/session/bench';
import { BenchController } from '../../bench-controller';
import { buttonStyles } from '../../controls/button-styles';
import '../../controls/choice';
import '../../controls/number-field';
import { sharedStyles } from '../../theme/shared-styles';
import { changeMicrophone } from './change-microphone';
import { calibrationSentence, otherMicrophone } from './sound-level-words';

type Means = '94' | '114' | 'meter';

const means: readonly { value: Means; label: string }[] = [
  {
    value: '94',
    get label() {
      return msg('Calibrator, 94\u202fdB');
    },
  },
  {
    value: '114',
    get label() {
      return msg('Calibrator, 114\u202fdB');
    },
  },
  {
    value: 'meter',
    get label() {
      return msg('Sound level meter');
    },
  },
];

/** Ties the microphone's level to sound pressure: by a calibrator, or by a meter's reading. */
@customElement('ll-sound-level-calibration')
export class SoundLevelCalibrationPanel extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-3);
      }

      .row {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-2);
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @state() private chosen: Means = '94';
  @state() private meterDb = 75;
  @state() private listening = false;
  private readonly follow = new BenchController(this);

  private async calibrate(): Promise<void> {
    this.listening = true;
    if (this.chosen === 'meter') {
      await this.bench?.calibrateSoundLevel(this.meterDb, 'sound level meter');
    } else {
      await this.bench?.calibrateSoundLevel(Number(this.chosen), 'calibrator');
    }
    this.listening = false;
  }

  override render() {
    const now = this.follow.state;
    if (!now) return nothing;
    const { soundLevel } = now.document.microphone;
    const recording = now.document.rig === 'recording';
    const busy = now.activity.kind !== 'idle' || recording || this.listening;
    const other = otherMicrophone(now);
    return html`<p>
        ${
          soundLevel
            ? calibrationSentence(soundLevel)
            : msg(
                'Not calibrated: levels are told in dB re full scale, and exposure cannot be told.',
              )
        }
      </p>
      ${other ? html`<p class="signal" role="alert">${other}</p>` : nothing}
      <ll-choice
        label=${msg('Calibrate by')}
        .options=${means}
        .value=${this.chosen}
        ?disabled=${busy}
        @ll-pick=${(event: CustomEvent<string>) => {
          const picked = means.find(({ value }) => value === event.detail);
          if (picked) this.chosen = picked.value;
        }}
      ></ll-choice>
      ${
        this.chosen === 'meter'
          ? html`<p>
                ${msg('Let a steady sound play that does not come from this computer, such as the processor’s own noise. Hold the meter beside the microphone and type what it shows.')}
              </p>
              <ll-number
                label=${msg('The meter shows')}
                unit="dB"
                min="30"
                max="140"
                decimals="1"
                .value=${this.meterDb}
                ?disabled=${busy}
                hint=${msg('With C weighting, slow.')}
                @ll-number=${(event: CustomEvent<number>) => (this.meterDb = event.detail)}
              ></ll-number>`
          : html`<p>
              ${msg('Push the calibrator over the microphone and switch it on. Its tone of 250 or 1000 Hz is listened to until it is steady, ten seconds at most.')}
            </p>`
      }
      ${
        recording
          ? html`<p class="soft">
              ${msg('With Recording no microphone is open here; choose Live under Connect first.')}
            </p>`
          : nothing
      }
      <div class="row">
        <button class="ghost" ?disabled=${busy} @click=${() => void this.calibrate()}>
          ${this.listening ? msg('Listening') : msg('Listen and calibrate')}
        </button>
        ${
          soundLevel
            ? html`<button
                class="ghost"
                ?disabled=${busy}
                @click=${() =>
                  changeMicrophone(this.bench, msg('Remove sound level calibration'), {
                    soundLevel: null,
                  })}
              >
                ${msg('Forget this calibration')}
              </button>`
            : nothing
        }
      </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-sound-level-calibration': SoundLevelCalibrationPanel;
  }
}
