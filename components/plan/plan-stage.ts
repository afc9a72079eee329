import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench } from '../../src/session/bench';
import type { ChannelLabel, Layout } from '../../src/system/channel';
import { layoutDeviation } from '../../src/system/edit-speakers';
import { notePlaces, type PlaceNote } from '../../src/system/place-notes';
import { BenchController } from '../bench-controller';
import { hearingLimit } from '../hearing-limit';
import { sharedStyles } from '../theme/shared-styles';
import { stageStyles } from '../theme/stage-styles';
import './angle-table';
import './conditions';
import { declaredPlan } from './declared-plan';
import './layout-picker';
import { layoutInWords } from './layout-words';
import './plan-editor';
import { planFinding } from './plan-finding';
import './room-fields';
import './seat-list';
import './speaker-palette';
import './speaker-panel';

/** Stage 1: what is there. */
@customElement('ll-plan')
export class PlanStage extends LitElement {
  static override styles = [
    sharedStyles,
    stageStyles,
    css`
      .places {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--space-4) var(--space-5);
        align-items: start;
      }

      @container (min-width: 52rem) {
        .places {
          grid-template-columns: minmax(0, 1fr) minmax(0, 24rem);
        }
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) selected: ChannelLabel | null = null;
  private readonly follow = new BenchController(this);

  protected override render(): TemplateResult | typeof nothing {
    const { state } = this.follow;
    if (!state) return nothing;
    const { layout } = state;
    const deviation = layoutDeviation(layout);
    const notes = notePlaces(declaredPlan(state));
    return html`<div class="lede">
        <h1>${msg(str`This room has ${layoutInWords(layout)}`)}</h1>
        <p>
          ${msg(str`That is ${layout.title}${deviation ? `, ${deviation}` : ''}: ${layout.channels.length} channels to probe.`)}
        </p>
      </div>
      <div class="sheets">
        <section class="sheet wide" aria-labelledby="layout">
          <h2 id="layout">${msg('Which speakers are there?')}</h2>
          <ll-layout-picker .bench=${this.bench}></ll-layout-picker>
          <ll-speaker-palette .bench=${this.bench}></ll-speaker-palette>
        </section>
        <section class="sheet wide" aria-labelledby="places">
          <h2 id="places">${planFinding(notes)}</h2>
          <div class="places">
            <div class="column">
              <ll-plan-editor .bench=${this.bench} .selected=${this.selected}></ll-plan-editor>
              ${renderNotes(notes.filter(({ labels }) => !labels.some((label) => label === this.selected)))}
            </div>
            <ll-speaker-panel .bench=${this.bench} .selected=${this.selected}></ll-speaker-panel>
          </div>
        </section>
        <div class="column">
          <section class="sheet" aria-labelledby="angles">
            <h2 id="angles">${msg('Where they stand, seen from the seat')}</h2>
            <div class="scroll">
              <ll-angle-table
                .layout=${layout}
                .system=${state.document.system}
                .selected=${this.selected}
              ></ll-angle-table>
            </div>
            <p class="soft small">${msg('Ranges of ITU-R BS.2051; it gives subs no place.')}</p>
          </section>
          <section class="sheet" aria-labelledby="room">
            <h2 id="room">${msg('The room, if you know it')}</h2>
            <ll-room .bench=${this.bench}></ll-room>
          </section>
          <section class="sheet" aria-labelledby="seats">
            <h2 id="seats">${msg('Other seats, seen from the main one')}</h2>
            <ll-seats .bench=${this.bench}></ll-seats>
          </section>
        </div>
        <div class="column">
          <section class="sheet" aria-labelledby="conditions">
            <h2 id="conditions">${msg('What distances rest on')}</h2>
            <ll-conditions .bench=${this.bench}></ll-conditions>
          </section>
          <section class="sheet" aria-labelledby="cautions">
            <h2 id="cautions">${msg('Before the first sound')}</h2>
            <ul class="list">
              ${cautionsFor(layout).map((caution) => html`<li>${caution}</li>`)}
            </ul>
          </section>
        </div>
      </div>`;
  }
}

function renderNotes(notes: readonly PlaceNote[]): TemplateResult | typeof nothing {
  if (notes.length === 0) return nothing;
  return html`<ul class="list">
      ${notes.map(({ sentence }) => html`<li>${sentence}</li>`)}
    </ul>
    <p class="soft small">${msg('None of this keeps a speaker from being measured.')}</p>`;
}

function cautionsFor(layout: Layout): string[] {
  const cautions = [
    msg(
      'Start with the processor’s volume low and raise it until the sweep is clear of the noise. Esc or Stop silences everything at once.',
    ),
    msg(str`Sweeps are loud. ${hearingLimit()}`),
    msg(
      'Disconnect or mute any speaker that must not get low bass; the sweep of a main channel starts at 10 Hz.',
    ),
    msg(
      'Switch amplifiers off before moving plugs. Mains, in-wall and ceiling work follows local codes and is left to licensed trades.',
    ),
  ];
  if (layout.channels.some((channel) => channel.kind === 'height')) {
    cautions.push(
      msg('Start no sweep while someone stands on a ladder: a loud start can startle.'),
    );
  }
  return cautions;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-plan': PlanStage;
  }
}
