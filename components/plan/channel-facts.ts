import { sayValue } from '../../src/proposal/settings-list';
import { stateWord } from '../../src/locale/state-words';
import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { styleMap } from 'lit/directives/style-map.js';
import type { ChannelProposal } from '../../src/proposal/proposal';
import type { ChannelReading, RolloffReading } from '../../src/reading/reading';
import { heardInWords, togetherOf, type RolloffTogether } from '../../src/reading/rolloff-together';
import { untoldOf } from '../../src/reading/untold';
import type { Bench } from '../../src/session/bench';
import type { Channel, ChannelLabel, Layout } from '../../src/system/channel';
import type { DeclaredSystem } from '../../src/system/declared-system';
import { BenchController } from '../bench-controller';
import { lengthText } from '../../src/locale/length-text';
import {
  dbText,
  hzText,
  intervalText,
  millisecondsText,
  signedText,
  thinSpace,
} from '../../src/locale/number-text';
import { groupColour } from '../group-colour';
import { sharedStyles } from '../theme/shared-styles';
import { asSentence } from './layout-words';
import { partnersOf } from './partner';
import { directionInWords, elevationInWords } from './speaker-name';

/** What is known of the selected speaker, from the plan, the newest take and the proposal. */
@customElement('ll-channel-facts')
export class ChannelFacts extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-2);
        align-content: start;
      }

      h2 {
        display: flex;
        flex-wrap: wrap;
        justify-content: space-between;
        gap: 0 var(--space-2);
      }

      .range {
        white-space: nowrap;
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
  private readonly follow = new BenchController(this);

  protected override render(): TemplateResult | typeof nothing {
    const { state } = this.follow;
    const channel = state?.layout.channels.find((one) => one.label === this.selected);
    if (!state || !channel) return nothing;
    const readings = state.readings?.layout === state.layout.name ? state.readings : null;
    const reading = readings?.channels.find((one) => one.channel === channel.label) ?? null;
    const proposal = state.proposal?.channels.find((one) => one.channel === channel.label) ?? null;
    const together = togetherOf(state.together, channel.label);
    return html`<h2>
        <span class="name">${asSentence(channel.name)}</span>
        <span class="num" style=${styleMap({ color: groupColour(channel.group) })}
          >${channel.label}</span
        >
      </h2>
      <dl class="facts">
        ${declaredFacts(channel, state.layout, state.document.system)}
        ${reading && readings ? measuredFacts(reading, readings.reference, together) : nothing}
        ${proposal ? proposedFacts(proposal) : nothing}
      </dl>
      ${reading ? renderNotes(reading, proposal) : html`<p class="soft">${msg('Not measured yet.')}</p>`}`;
  }
}

function declaredFacts(channel: Channel, layout: Layout, system: DeclaredSystem): TemplateResult {
  const partners = partnersOf(channel, layout).map((one) => one.label);
  const elevation = elevationInWords(channel.elevationDegrees);
  const height = elevation === 'ear height' ? nothing : `, ${elevation}`;
  const distance = system.places[channel.label]?.distanceMetres ?? null;
  return html`<dt>${channel.kind === 'sub' ? msg('Drawn at') : msg('Declared at')}</dt>
    <dd>${directionInWords(channel.azimuthDegrees)}${height}</dd>
    ${
      distance === null
        ? nothing
        : html`<dt>${msg('Declared distance')}</dt>
            <dd class="num">${lengthText(distance)}</dd>`
    }
    ${
      system.bounced.includes(channel.label)
        ? html`<dt>${msg('Plays')}</dt>
            <dd>${msg('off the ceiling')}</dd>`
        : nothing
    }
    ${
      partners.length === 0
        ? nothing
        : html`<dt>${channel.kind === 'sub' ? msg('Plays with') : msg('One crossover with')}</dt>
            <dd>${partners.join(', ')}</dd>`
    }`;
}

function measuredFacts(
  reading: ChannelReading,
  reference: ChannelLabel,
  together: RolloffTogether | null,
): TemplateResult {
  return html`<dt>${msg('Distance')}</dt>
    <dd class="num">${lengthText(reading.distanceMetres)}</dd>
    ${
      reading.ceilingPathMetres === null
        ? nothing
        : html`<dt>${msg('Path over the ceiling')}</dt>
            <dd class="num">${lengthText(reading.ceilingPathMetres)}</dd>`
    }
    ${
      reading.channel === reference
        ? html`<dt>${msg('Arrival')}</dt>
            <dd>${msg('reference for all')}</dd>`
        : html`<dt>${msg(str`Arrival after ${reference}`)}</dt>
            <dd class="num">${millisecondsText(reading.arrivalSeconds)}</dd>`
    }
    <dt>${msg('Polarity')}</dt>
    <dd class=${reading.polarity === 'inverted' ? 'signal' : ''}>${stateWord(reading.polarity)}</dd>
    ${reading.rolloff ? rolloffFacts(reading.rolloff) : nothing}
    ${together?.finding.rolloff ? togetherFacts(together, together.finding.rolloff) : nothing}
    <dt>${msg(html`Over the noise <span class="range">40–80${thinSpace}Hz</span>`)}</dt>
    <dd class="num">${dbText(reading.bassMarginDb, 0)}</dd>`;
}

function rolloffFacts({ f3Hz, box }: RolloffReading): TemplateResult {
  return html`<dt>${msg(str`Roll-off, −3${thinSpace}dB`)}</dt>
    <dd class="num">
      ${hzText(f3Hz.median)} <span class="soft">${intervalText(f3Hz.interval)}</span>
    </dd>
    <dt>${msg('Box')}</dt>
    <dd>${stateWord(box.kind)}</dd>`;
}

function togetherFacts({ order }: RolloffTogether, { f3Hz }: RolloffReading): TemplateResult {
  return html`<dt>${msg(str`Read from ${heardInWords(order)}`)}</dt>
    <dd class="num">
      ${hzText(f3Hz.median)} <span class="soft">${intervalText(f3Hz.interval)}</span>
    </dd>`;
}

function proposedFacts(proposal: ChannelProposal): TemplateResult {
  return html`<dt>${msg('Distance to type')}</dt>
    <dd class="num">${proposal.distance ? sayValue(proposal.distance) : '–'}</dd>
    <dt>${msg('Level trim to type')}</dt>
    <dd class="num">
      ${signedText(proposal.levelTrimDb, 1)}${
        proposal.levelTrimDb === null ? nothing : `${thinSpace}dB`
      }
    </dd>`;
}

function renderNotes(
  reading: ChannelReading,
  proposal: ChannelProposal | null,
): TemplateResult | typeof nothing {
  const wrong = [...reading.faults.map((fault) => fault.sentence), ...(proposal?.warnings ?? [])];
  const untold = untoldOf(reading).map(({ sentence }) => sentence);
  const notes = [...new Set([...reading.notes, ...untold])].filter((one) => !wrong.includes(one));
  if (wrong.length + notes.length === 0) return nothing;
  return html`<ul>
    ${[...new Set(wrong)].map((sentence) => html`<li class="signal">${sentence}</li>`)}
    ${notes.map((sentence) => html`<li class="soft">${sentence}</li>`)}
  </ul>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-channel-facts': ChannelFacts;
  }
}
