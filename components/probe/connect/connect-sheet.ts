import { msg } from '@lit/localize';
import { LitElement, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench } from '../../../src/session/bench';
import { BenchController } from '../../bench-controller';
import { sharedStyles } from '../../theme/shared-styles';
import { stageStyles } from '../../theme/stage-styles';
import '../routing/routing-table';
import './device-pickers';
import './given-facts';
import './input-choice';
import './practice-rig';
import './rig-choice';

const cautions = () => [
  msg('Switch amplifiers off before moving plugs.'),
  msg('Start quiet. Leave the room or wear hearing protection when the sweeps are loud.'),
  msg('Keep this page in front: a hidden page ends the take.'),
];

/** The first sheet of Probe: how the speakers are reached and what is wired to what. */
@customElement('ll-connect-sheet')
export class ConnectSheet extends LitElement {
  static override styles = [sharedStyles, stageStyles];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    const { rig } = state.document;
    const choice = html`<ll-rig-choice .bench=${this.bench}></ll-rig-choice>`;
    if (rig === 'live') return this.live(choice);
    return html`<div class="sheets">
      <section class="sheet wide" aria-label=${msg('How the speakers are reached')}>
        ${choice}
        ${
          rig === 'practice'
            ? html`<ll-practice-rig .bench=${this.bench}></ll-practice-rig>`
            : html`<p>
                ${msg(html`Nothing is connected to this computer: the take is saved as a file, played by whatever reaches all ${state.layout.channels.length} speakers, and its recording is brought back. The steps stand under <a href="#probe/take">Take</a>.`)}
              </p>`
        }
      </section>
    </div>`;
  }

  private live(choice: unknown) {
    return html`<div class="sheets">
      <div class="column">
        <section class="sheet" aria-label=${msg('Devices')}>
          ${choice}
          <p>
            ${msg('Needs this computer’s output wired to the processor, by HDMI or a multichannel interface, and a microphone at the seat.')}
          </p>
          <ll-device-pickers .bench=${this.bench}></ll-device-pickers>
          <ll-input-choice .bench=${this.bench}></ll-input-choice>
        </section>
        <section class="sheet" aria-labelledby="routing">
          <h2 id="routing">${msg('Which output feeds which speaker')}</h2>
          <ll-routing-table .bench=${this.bench}></ll-routing-table>
        </section>
      </div>
      <div class="column">
        <section class="sheet" aria-labelledby="given">
          <h2 id="given">${msg('What the browser gave')}</h2>
          <ll-given-facts .bench=${this.bench}></ll-given-facts>
        </section>
        <section class="sheet" aria-labelledby="cautions">
          <h2 id="cautions">${msg('Before anything sounds')}</h2>
          <ul class="list">
            ${cautions().map((caution) => html`<li>${caution}</li>`)}
          </ul>
        </section>
      </div>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-connect-sheet': ConnectSheet;
  }
}
