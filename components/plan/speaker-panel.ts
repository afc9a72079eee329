import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { styleMap } from 'lit/directives/style-map.js';
import type { Bench } from '../../src/session/bench';
import type { Channel, ChannelLabel } from '../../src/system/channel';
import type { DeclaredSystem } from '../../src/system/declared-system';
import { partnerOf } from '../../src/system/partner-label';
import { forgetPlace, mirrorSpeaker, moveSpeaker, setBounced } from '../../src/system/move-speaker';
import {
  nominalChannel,
  notePlaces,
  rangeInWords,
  standardsHave,
} from '../../src/system/place-notes';
import type { DeclaredPlan } from '../../src/system/standing-place';
import type { Trouble } from '../../src/trouble';
import { BenchController } from '../bench-controller';
import { buttonStyles } from '../controls/button-styles';
import '../controls/choice';
import '../controls/number-field';
import type { NumberField } from '../controls/number-field';
import { groupColour } from '../group-colour';
import { sharedStyles } from '../theme/shared-styles';
import { declare, declaredPlan, isBusy } from './declared-plan';
import { asSentence } from './layout-words';
import { angleEntries, metreEntries, type PlaceEntry } from './place-entries';
import { putBack } from './put-back';

/** The selected speaker: its place to type, how a height plays, its range and what stands out. */
@customElement('ll-speaker-panel')
export class SpeakerPanel extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      :host {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--space-3);
      }

      h2 {
        display: flex;
        flex-wrap: wrap;
        justify-content: space-between;
        gap: 0 var(--space-2);
      }

      .fields {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(9rem, 1fr));
        gap: var(--space-3);
        align-items: start;
      }

      .actions {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-2);
      }

      ul {
        padding-left: 1.1rem;
        display: grid;
        gap: var(--space-1);
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) selected: ChannelLabel | null = null;
  @state() private by: 'angle' | 'metres' = 'angle';
  @state() private refusal: { readonly label: ChannelLabel; readonly sentence: string } | null =
    null;
  private readonly follow = new BenchController(this);

  protected override render(): TemplateResult | typeof nothing {
    const { state } = this.follow;
    if (!state) return nothing;
    const { selected } = this;
    const channel = state.layout.channels.find(({ label }) => label === selected);
    if (!channel) {
      return html`<h2>${msg('No speaker is picked')}</h2>
        <p class="soft">
          ${msg('Pick one on the drawing to type where it stands and to see its range.')}
        </p>`;
    }
    const plan = declaredPlan(state);
    const busy = isBusy(state);
    const refusal = this.refusal?.label === channel.label ? this.refusal.sentence : null;
    return html`<h2>
        <span>${asSentence(channel.name)}</span>
        <span class="num" style=${styleMap({ color: groupColour(channel.group) })}
          >${channel.label}</span
        >
      </h2>
      <p class="soft">${rangeSentence(plan, channel)}</p>
      <ll-choice
        label=${msg('Its place, by')}
        .options=${[
          { value: 'angle', label: msg('Angle and distance') },
          { value: 'metres', label: msg('Offsets from the seat') },
        ]}
        .value=${this.by}
        @ll-pick=${(event: CustomEvent<string>) =>
          (this.by = event.detail === 'metres' ? 'metres' : 'angle')}
      ></ll-choice>
      <div class="fields">
        ${(this.by === 'angle' ? angleEntries(plan, channel) : metreEntries(plan, channel)).map(
          (entry) => this.renderEntry(entry, channel.label, busy),
        )}
      </div>
      ${refusal ? html`<p class="signal" role="alert">${msg(str`${refusal} It stays where it was.`)}</p>` : nothing}
      ${channel.kind === 'height' ? this.renderAim(plan, channel, busy) : nothing}
      ${renderNotes(plan, channel.label)} ${this.renderActions(plan, channel, busy)}`;
  }

  private renderEntry(entry: PlaceEntry, label: ChannelLabel, busy: boolean): TemplateResult {
    return html`<ll-number
      label=${entry.label}
      unit=${entry.unit}
      measure=${entry.unit === 'm' ? 'length' : 'number'}
      .min=${entry.min}
      .max=${entry.max}
      decimals=${entry.unit === 'm' ? 2 : (entry.value ?? 0) % 1 === 0 ? 0 : 1}
      .value=${entry.value ?? NaN}
      hint=${entry.hint}
      ?disabled=${busy}
      @ll-number=${(event: CustomEvent<number>) => {
        const sentence = this.do(msg(str`Move ${label}`), label, entry.enter(event.detail));
        if (sentence === null) return;
        void putBack<NumberField>(event, (field) => (field.value = entry.value ?? NaN));
      }}
    ></ll-number>`;
  }

  private renderAim(plan: DeclaredPlan, { label }: Channel, busy: boolean): TemplateResult {
    const bounced = plan.system.bounced.includes(label);
    const pair = msg(str`${label} and ${partnerOf(label)}`);
    return html`<ll-choice
      label=${msg(str`How ${pair} play`)}
      .options=${[
        { value: 'down', label: msg('Aimed down') },
        { value: 'bounced', label: msg('Bounced off the ceiling') },
      ]}
      .value=${bounced ? 'bounced' : 'down'}
      ?disabled=${busy}
      @ll-pick=${(event: CustomEvent<string>) =>
        this.do(
          event.detail === 'bounced' ? msg(str`Bounce ${pair}`) : msg(str`Aim ${pair} down`),
          label,
          setBounced(plan, label, event.detail === 'bounced'),
        )}
    ></ll-choice>`;
  }

  private renderActions(plan: DeclaredPlan, { label }: Channel, busy: boolean): TemplateResult {
    const partner = partnerOf(label);
    const place = plan.system.places[label];
    return html`<div class="actions">
      ${
        partner === label
          ? nothing
          : html`<button
              class="ghost"
              ?disabled=${busy}
              @click=${() => this.do(msg(str`Mirror ${label}`), label, mirrorSpeaker(plan, label))}
            >
              ${msg(str`Put ${partner} opposite`)}
            </button>`
      }
      ${
        place
          ? html`<button
              class="ghost"
              ?disabled=${busy}
              @click=${() => this.do(msg(str`Put ${label} back`), label, forgetPlace(plan.system, label))}
            >
              ${msg('Back to its nominal place')}
            </button>`
          : nothing
      }
      ${
        place && place.distanceMetres !== null
          ? html`<button
              class="ghost"
              ?disabled=${busy}
              @click=${() =>
                this.do(
                  msg(str`Forget the distance of ${label}`),
                  label,
                  moveSpeaker(plan, label, { ...place, distanceMetres: null }),
                )}
            >
              ${msg('Distance not known')}
            </button>`
          : nothing
      }
    </div>`;
  }

  private do(name: string, label: ChannelLabel, system: DeclaredSystem | Trouble): string | null {
    const sentence = declare(this.bench, name, system);
    this.refusal = sentence === null ? null : { label, sentence };
    return sentence;
  }
}

function rangeSentence(plan: DeclaredPlan, channel: Channel): string {
  if (channel.kind === 'sub') return msg('The standards give subs no place.');
  const nominal = nominalChannel(plan, channel.label);
  const range = nominal && rangeInWords(nominal);
  const lone =
    channel.group === 'sides' && !plan.layout.channels.some((one) => one.group === 'backs');
  const role = lone
    ? msg(' As the only pair of surrounds it is the side pair, wherever it stands.')
    : '';
  return msg(str`${standardsHave(plan, channel)} it ${range ?? msg('anywhere')}.${role}`);
}

function renderNotes(plan: DeclaredPlan, label: ChannelLabel): TemplateResult | typeof nothing {
  const notes = notePlaces(plan).filter(({ labels }) => labels.includes(label));
  if (notes.length === 0) return nothing;
  return html`<ul>
    ${notes.map(({ sentence }) => html`<li>${sentence}</li>`)}
  </ul>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-speaker-panel': SpeakerPanel;
  }
}
