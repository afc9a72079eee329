import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Bench } from '../../../src/session/bench';
import type { ChannelReading } from '../../../src/reading/reading';
import type { ChannelLabel } from '../../../src/system/channel';
import type { PairedPosition, PairedSpeaker } from '../../../src/visits/pair-positions';
import type { VisitFinding } from '../../../src/visits/visits';
import { BenchController } from '../../bench-controller';
import '../../charts/curve/curve-chart';
import type { CurveAxes, CurveTrace } from '../../charts/curve/curve-trace';
import { selectStyles } from '../../controls/select-styles';
import { speakerSelect } from '../../controls/speaker-select';
import { groupColour } from '../../group-colour';
import { sharedStyles } from '../../theme/shared-styles';
import { beforeAfterAxes } from '../before-after-curves';
import { comparedVisits } from './compared';

/** The response of one speaker at one place, then and now. */
@customElement('ll-visit-curves')
export class VisitCurves extends LitElement {
  static override styles = [
    sharedStyles,
    selectStyles,
    css`
      :host {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--space-3);
      }

      .pickers {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(14rem, 100%), 22rem));
        gap: var(--space-3);
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) selected: ChannelLabel | null = null;
  @state() private place: string | null = null;
  private readonly follow = new BenchController(this);
  private kept: {
    readonly speaker: PairedSpeaker;
    readonly traces: readonly CurveTrace[];
    readonly axes: CurveAxes;
  } | null = null;

  override render() {
    const { state } = this.follow;
    const compared = state && comparedVisits(state);
    if (!compared) return nothing;
    const pairs = compared.paired.pairs.filter(({ speakers }) => speakers.length > 0);
    const pair = pairs.find(({ position }) => position.id === this.place) ?? pairs[0];
    const [first] = pair?.speakers ?? [];
    if (!pair || !first)
      return html`<p>${msg('No speaker was heard at one place at both visits.')}</p>`;
    const changed = firstChanged(compared.comparison.findings, pair);
    const speaker =
      pair.speakers.find(({ channel }) => channel.label === this.selected) ??
      pair.speakers.find(({ channel }) => channel.label === changed) ??
      first;
    const { channel } = speaker;
    const { traces, axes } = this.drawn(speaker);
    const title = msg(str`${channel.label} at ${pair.position.name}, then and now`);
    return html`<h2>${title}${compared.comparison.simulated ? msg(' (simulated)') : ''}</h2>
      <div class="pickers">
        ${speakerSelect(
          this,
          pair.speakers.map((one) => one.channel),
          channel.label,
        )}
        ${pairs.length > 1 ? this.places(pairs, pair) : nothing}
      </div>
      ${
        traces.length === 0
          ? html`<p>${msg(str`No response of ${channel.label} was kept; take it again.`)}</p>`
          : html`<ll-curve-chart .label=${title} .traces=${traces} .axes=${axes}></ll-curve-chart>
              <p class="soft small">
                ${msg(str`1/24 octave, each against its own mean of ${channel.kind === 'sub' ? msg('40 to 80') : msg('500 to 2000')} Hz.`)}
              </p>`
      }`;
  }

  private places(pairs: readonly PairedPosition[], here: PairedPosition) {
    return html`<label class="select">
      <span>${msg('Position')}</span>
      <select
        @change=${(event: Event) => {
          this.place = (event.currentTarget as HTMLSelectElement).value;
        }}
      >
        ${pairs.map(
          ({ position: { id, name } }) =>
            html`<option value=${id} .selected=${id === here.position.id}>${name}</option>`,
        )}
      </select>
    </label>`;
  }

  /** The same curves as long as the readings are the same. */
  private drawn(speaker: PairedSpeaker) {
    const { kept } = this;
    if (kept?.speaker === speaker) return kept;
    const colour = groupColour(speaker.channel.group);
    const traces = [
      ...traceOf(speaker.now, 'now', colour, 'solid'),
      ...traceOf(speaker.before, 'then', 'var(--soft)', 'dashed'),
    ];
    this.kept = { speaker, traces, axes: beforeAfterAxes(traces) };
    return this.kept;
  }
}

/** The first speaker that changed at a place. */
function firstChanged(
  findings: readonly VisitFinding[],
  { position: { name } }: PairedPosition,
): ChannelLabel | null {
  const found = findings.find(
    ({ verdict, position, channels }) =>
      verdict === 'changed' && position === name && channels.length > 0,
  );
  return found?.channels[0] ?? null;
}

function traceOf(
  { curves }: ChannelReading,
  name: string,
  colour: string,
  stroke: CurveTrace['stroke'],
): CurveTrace[] {
  return curves ? [{ name, colour, stroke, x: curves.response.hz, y: curves.response.db }] : [];
}

declare global {
  interface HTMLElementTagNameMap {
    'll-visit-curves': VisitCurves;
  }
}
