import { msg } from '@lit/localize';
import { LitElement, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench } from '../../../src/session/bench';
import { BenchController } from '../../bench-controller';
import { sharedStyles } from '../../theme/shared-styles';
import { stageStyles } from '../../theme/stage-styles';
import './climb-form';
import './climb-outcome';
import './climb-progress';
import './exposure-facts';
import './test-level';

/** The third sheet of Probe: how loud takes and noise are played. */
@customElement('ll-level-sheet')
export class LevelSheet extends LitElement {
  static override styles = [sharedStyles, stageStyles];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    const exposure = html`<section class="sheet" aria-labelledby="exposure">
      <h2 id="exposure">${msg('Sound taken today')}</h2>
      <ll-exposure-facts .bench=${this.bench}></ll-exposure-facts>
    </section>`;
    if (state.document.rig === 'recording') {
      return html`<section class="sheet" aria-label=${msg('Level')}>
        <p>
          ${msg('With Recording the level is set where the take is played: start quiet, and go up until the sweeps stand well clear of the room’s noise without clipping the recorder. Then leave it.')}
        </p>
      </section>`;
    }
    const practice = state.document.rig === 'practice';
    const climbing = state.activity.kind === 'climbing';
    return html`<div class="sheets">
      <div class="column">
        <section class="sheet" aria-labelledby="climb">
          <h2 id="climb">${msg('Climb to a test level')}</h2>
          ${
            climbing
              ? html`<ll-climb-progress .bench=${this.bench}></ll-climb-progress>`
              : html`<ll-climb-outcome .climbed=${state.climbed}></ll-climb-outcome>
                  <ll-climb-form .bench=${this.bench}></ll-climb-form>`
          }
        </section>
      </div>
      <div class="column">
        <section class="sheet" aria-labelledby="by-hand">
          <h2 id="by-hand">${msg('Set by hand')}</h2>
          ${
            practice
              ? html`<p class="soft">
                  ${msg('For live takes and for noise. Takes of the practice room have their own level, and a climb in it leaves this one as it is.')}
                </p>`
              : nothing
          }
          <ll-test-level .bench=${this.bench}></ll-test-level>
        </section>
        ${exposure}
      </div>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-level-sheet': LevelSheet;
  }
}
