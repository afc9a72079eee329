import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench } from '../../src/session/bench';
import type { ChannelLabel, Layout } from '../../src/system/channel';
import { BenchController } from '../bench-controller';
import { sharedStyles } from '../theme/shared-styles';
import { stageStyles } from '../theme/stage-styles';
import './angle-table';
import './conditions';
import './layout-picker';
import { layoutInWords } from './layout-words';

/** Stage 1: what is there. */
@customElement('ll-plan')
export class PlanStage extends LitElement {
  static override styles = [sharedStyles, stageStyles];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) selected: ChannelLabel | null = null;
  private readonly follow = new BenchController(this);

  protected override render(): TemplateResult | typeof nothing {
    const { state } = this.follow;
    if (!state) return nothing;
    const { layout } = state;
    return html`<div class="lede">
        <h1>This room has ${layoutInWords(layout)}</h1>
        <p>That is ${layout.name}, ${layout.channels.length} channels to probe.</p>
      </div>
      <div class="sheets">
        <section class="sheet wide" aria-labelledby="layout">
          <h2 id="layout">Which speakers are there?</h2>
          <ll-layout-picker .bench=${this.bench}></ll-layout-picker>
        </section>
        <section class="sheet" aria-labelledby="angles">
          <h2 id="angles">Where they should stand, seen from the seat</h2>
          <div class="scroll">
            <ll-angle-table .layout=${layout} .selected=${this.selected}></ll-angle-table>
          </div>
          <p class="soft small">
            Directions of ITU-R BS.2051; it gives subs no place. Speakers outside these ranges can
            be measured all the same.
          </p>
        </section>
        <div class="column">
          <section class="sheet" aria-labelledby="conditions">
            <h2 id="conditions">What distances rest on</h2>
            <ll-conditions .bench=${this.bench}></ll-conditions>
          </section>
          <section class="sheet" aria-labelledby="cautions">
            <h2 id="cautions">Before the first sound</h2>
            <ul class="list">
              ${cautionsFor(layout).map((caution) => html`<li>${caution}</li>`)}
            </ul>
          </section>
        </div>
      </div>`;
  }
}

function cautionsFor(layout: Layout): string[] {
  const cautions = [
    'Start with the processor’s volume low and raise it until the sweep is clear of the noise. Esc or Stop silences everything at once.',
    'Sweeps are loud: 85 dB(A) is safe for 8 hours, each 3 dB more halves that time (NIOSH 1998). Above it leave the room or wear protection.',
    'Disconnect or mute any speaker that must not get low bass; the sweep of a main channel starts at 10 Hz.',
    'Switch amplifiers off before moving plugs. Mains, in-wall and ceiling work follows local codes and is left to licensed trades.',
  ];
  if (layout.channels.some((channel) => channel.kind === 'height')) {
    cautions.push('Start no sweep while someone stands on a ladder: a loud start can startle.');
  }
  return cautions;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-plan': PlanStage;
  }
}
