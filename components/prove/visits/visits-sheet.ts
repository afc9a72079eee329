import { msg } from '@lit/localize';
import { LitElement, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench } from '../../../src/session/bench';
import type { ChannelLabel } from '../../../src/system/channel';
import { BenchController } from '../../bench-controller';
import { sharedStyles } from '../../theme/shared-styles';
import { stageStyles } from '../../theme/stage-styles';
import { comparedVisits } from './compared';
import './visit-curves';
import './visit-findings';
import './visit-picker';

/** The third sheet of Prove: this visit beside an earlier one of the same system. */
@customElement('ll-visits-sheet')
export class VisitsSheet extends LitElement {
  static override styles = [sharedStyles, stageStyles];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) selected: ChannelLabel | null = null;
  private readonly follow = new BenchController(this);

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    const { bench, selected } = this;
    const isChosen = comparedVisits(state) !== null;
    return html`<div class="sheets">
      ${
        isChosen
          ? html`<section class="sheet" aria-label=${msg('What was found')}>
              <ll-visit-findings .bench=${bench}></ll-visit-findings>
            </section>`
          : nothing
      }
      <section class="sheet" aria-label=${msg('The earlier visit')}>
        <ll-visit-picker .bench=${bench}></ll-visit-picker>
      </section>
      ${
        isChosen
          ? html`<section class="sheet wide" aria-label=${msg('Then and now')}>
              <ll-visit-curves .bench=${bench} .selected=${selected}></ll-visit-curves>
            </section>`
          : nothing
      }
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-visits-sheet': VisitsSheet;
  }
}
