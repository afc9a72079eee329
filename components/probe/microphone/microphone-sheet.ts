import { msg } from '@lit/localize';
import { LitElement, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench } from '../../../src/session/bench';
import { BenchController } from '../../bench-controller';
import { sharedStyles } from '../../theme/shared-styles';
import { stageStyles } from '../../theme/stage-styles';
import './calibration-file';
import './orientation-choice';
import './sound-level-calibration';

/** The second sheet of Probe: what is known of the microphone. */
@customElement('ll-microphone-sheet')
export class MicrophoneSheet extends LitElement {
  static override styles = [sharedStyles, stageStyles];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);

  override render() {
    if (!this.follow.state) return nothing;
    return html`<div class="sheets halves">
      <div class="column">
        <section class="sheet" aria-labelledby="file">
          <h2 id="file">${msg('Calibration file')}</h2>
          <ll-calibration-file .bench=${this.bench}></ll-calibration-file>
        </section>
      </div>
      <div class="column">
        <section class="sheet" aria-labelledby="level">
          <h2 id="level">${msg('Sound level')}</h2>
          <ll-sound-level-calibration .bench=${this.bench}></ll-sound-level-calibration>
        </section>
        <section class="sheet" aria-label=${msg('Orientation')}>
          <ll-orientation-choice .bench=${this.bench}></ll-orientation-choice>
        </section>
      </div>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-microphone-sheet': MicrophoneSheet;
  }
}
