import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Bench } from '../../../src/session/bench';
import type { TakePurpose } from '../../../src/session/document';
import { BenchController } from '../../bench-controller';
import { buttonStyles } from '../../controls/button-styles';
import '../../controls/file-drop';
import { sharedStyles } from '../../theme/shared-styles';
import { saveFile } from './save-file';

/** The take as files: saved, played elsewhere, recorded, and brought back. */
@customElement('ll-recording-rig')
export class RecordingRig extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-4);
      }

      ol {
        display: grid;
        gap: var(--space-4);
        padding: 0;
        list-style: none;
        counter-reset: step;
      }

      li {
        display: grid;
        gap: var(--space-2);
        justify-items: start;
        counter-increment: step;
      }

      li > h3::before {
        content: counter(step) '. ';
      }

      ll-file-drop {
        justify-self: stretch;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  /** What the take is for. */
  @property() purpose: TakePurpose = 'probe';
  @state() private said = '';
  @state() private saving = false;
  private readonly follow = new BenchController(this);

  private async save(): Promise<void> {
    if (!this.bench) return;
    this.saving = true;
    this.said = msg('Preparing the files.');
    const files = await this.bench.saveStimulus(this.purpose);
    for (const { name, blob } of files ?? []) saveFile(name, blob);
    this.said = files ? msg(str`Saved ${files.map(({ name }) => name).join(' and ')}.`) : '';
    this.saving = false;
  }

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    const busy = state.activity.kind !== 'idle';
    return html`<p>
        ${msg(str`Needs any player that reaches all ${state.layout.channels.length} speakers, and any recorder with one microphone at the seat. This computer plays nothing.`)}
      </p>
      <ol>
        <li>
          <h3>${msg('Save the take')}</h3>
          <p>
            ${msg('Two files: take.wav with one channel a speaker, and take.json, its schedule. Keep both as they are.')}
          </p>
          <button class="go" ?disabled=${busy || this.saving} @click=${() => void this.save()}>
            ${msg('Save the take')}
          </button>
          <p class="small soft" role="status">${this.said}</p>
        </li>
        <li>
          <h3>${msg('Play and record it')}</h3>
          <p>
            ${msg(
              str`${
                this.purpose === 'prove'
                  ? msg(
                      'Through the processor, with everything typed; equaliser, dynamics and upmixing off.',
                    )
                  : msg('Crossovers, equaliser, dynamics and upmixing off.')
              } Start quiet, at one fixed volume; record from before its start to after its end without a pause, as an uncompressed WAV.`,
            )}
          </p>
        </li>
        <li>
          <h3>${msg('Bring the recording back')}</h3>
          <ll-file-drop
            label=${msg('Choose the recording')}
            hint=${msg('or drop its WAV file here')}
            name=${msg('Recording of the take')}
            accept=".wav,audio/wav,audio/x-wav"
            ?disabled=${busy}
            @ll-file=${(event: CustomEvent<File>) =>
              void this.bench?.importCapture(event.detail, this.purpose)}
          ></ll-file-drop>
        </li>
      </ol>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-recording-rig': RecordingRig;
  }
}
