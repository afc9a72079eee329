import { msg, str } from '@lit/localize';
import { localeInForce } from '../../../src/locale/locale-in-force';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type {
  InspectRequest,
  Inspector,
  PhaseAnswer,
  ResponsesAnswer,
  TimeAnswer,
} from '../../../src/inspect/inspection';
import { noiseNote } from '../../../src/inspect/noise-note';
import type { Bench } from '../../../src/session/bench';
import { buttonStyles } from '../../controls/button-styles';
import '../../charts/curve/curve-chart';
import { chartStyles } from '../../charts/chart-styles';
import type { CurveAxes, CurveTrace } from '../../charts/curve/curve-trace';
import { hzText } from '../../../src/locale/number-text';
import { responseStyles } from '../../charts/response-styles';
import { sharedStyles } from '../../theme/shared-styles';
import { Asked } from './asked';
import type { ShownSource } from './inspect-sources';
import type { InspectWishes } from './inspect-wishes';
import {
  energyAxes,
  energyTraces,
  excessPhaseAxes,
  excessPhaseTraces,
  groupDelayAxes,
  groupDelayTraces,
  stepAxes,
  stepTraces,
} from './other-curves';
import { responseAxes, responseTraces } from './response-curves';
import './save-sound';

/** A chart of one kind of curve: its name, its lines, its axes. */
interface Drawing {
  readonly title: string;
  readonly traces: readonly CurveTrace[];
  readonly axes: CurveAxes;
  /** What to know about it; empty when nothing. */
  readonly caption: string;
}

type CurvesAnswer = ResponsesAnswer | PhaseAnswer | TimeAnswer;
type CurvesRequest = Extract<InspectRequest, { readonly kind: CurvesAnswer['kind'] }>;

function requestOf(
  { view, smoothing, window }: InspectWishes,
  shown: readonly ShownSource[],
): CurvesRequest {
  const sources = shown.map(({ takeId, channel }) => ({ takeId, channel }));
  if (view === 'phase' || view === 'time') return { kind: view, sources };
  return { kind: 'responses', sources, smoothing, window };
}

/** Where lines tell nothing for noise, and what would settle it; empty when they tell all that is shown. */
function sayGaps(traces: readonly CurveTrace[], { x: { low, high } }: CurveAxes): string {
  return traces
    .flatMap(({ name, x, y }) => {
      const inside = x.map((hz) => hz >= low && hz <= high);
      const shown = { hz: x.filter((_, k) => inside[k]), db: y.filter((_, k) => inside[k]) };
      const note = noiseNote(shown);
      return note === null ? [] : [traces.length > 1 ? `${name}: ${note}` : note];
    })
    .join(' ');
}

/** Responses, phases or times of the chosen speakers, and the files of them. */
@customElement('ll-curves-view')
export class CurvesView extends LitElement {
  static override styles = [
    sharedStyles,
    chartStyles,
    responseStyles,
    buttonStyles,
    css`
      :host {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--space-4);
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) inspector: Inspector | null = null;
  @property({ attribute: false }) wishes: InspectWishes | null = null;
  @property({ attribute: false }) sources: readonly ShownSource[] = [];
  @state() private range: 'low' | 'full' = 'full';
  private readonly asked = new Asked(this);
  private kept: { readonly key: readonly unknown[]; readonly drawings: readonly Drawing[] } | null =
    null;

  override render() {
    const { wishes, sources } = this;
    if (!wishes) return nothing;
    if (sources.length === 0) return html`<p>${msg('None of these speakers was read here.')}</p>`;
    const drawings = this.keptDrawings(wishes);
    if (this.asked.refusal !== null) {
      return html`<p class="signal" role="alert">${this.asked.refusal}</p>`;
    }
    if (!drawings) return html`<p class="soft" role="status">${msg('Being computed …')}</p>`;
    return html`${wishes.view === 'response' ? this.ranges() : nothing}
      ${drawings.map(
        ({ title, traces, axes, caption }) =>
          html`<div>
            ${drawings.length > 1 ? html`<h3>${title}</h3>` : nothing}
            <ll-curve-chart .label=${title} .traces=${traces} .axes=${axes}></ll-curve-chart>
            ${caption === '' ? nothing : html`<p class="soft small">${caption}</p>`}
          </div>`,
      )}
      <ll-save-sound
        .bench=${this.bench}
        .sources=${sources}
        .drawings=${drawings}
        .asked=${this.asked}
      ></ll-save-sound>`;
  }

  /** The same drawings as long as nothing they show has changed: the level moves many times a second. */
  private keptDrawings(wishes: InspectWishes): readonly Drawing[] | null {
    const answer = this.asked.to(requestOf(wishes, this.sources));
    if (!answer) return null;
    const key = [
      localeInForce(),
      answer,
      wishes,
      this.range,
      this.sources.map(({ name }) => name).join(),
    ];
    if (!this.kept || !key.every((value, n) => value === this.kept?.key[n])) {
      this.kept = { key, drawings: this.draw(answer, wishes) };
    }
    return this.kept.drawings;
  }

  private draw(answer: CurvesAnswer, wishes: InspectWishes): readonly Drawing[] {
    switch (answer.kind) {
      case 'responses':
        return this.response(answer, wishes);
      case 'phase':
        return this.phase(answer);
      case 'time':
        return this.time(answer);
    }
  }

  private response(answer: ResponsesAnswer, wishes: InspectWishes): Drawing[] {
    const traces = responseTraces(answer, this.sources, wishes);
    const from = Math.max(...answer.curves.map(({ fromHz }) => fromHz ?? 0));
    const axes = responseAxes(traces, wishes, this.range);
    const caption =
      from > 0
        ? msg(str`So short a part of the sound tells nothing below ${hzText(from)}.`)
        : sayGaps(traces, axes);
    return [{ title: msg('Response'), traces, axes, caption }];
  }

  private phase(answer: PhaseAnswer): Drawing[] {
    const delay = groupDelayTraces(answer, this.sources);
    const excess = excessPhaseTraces(answer, this.sources);
    return [
      {
        title: msg('Group delay after the arrival'),
        traces: delay,
        axes: groupDelayAxes(delay),
        caption: msg('How much later each frequency comes than the first sound.'),
      },
      {
        title: msg('Excess phase'),
        traces: excess,
        axes: excessPhaseAxes(excess),
        caption: msg(
          'What is left of the phase without the arrival and the minimum phase of the response: reflections that no equaliser can undo.',
        ),
      },
    ];
  }

  private time(answer: TimeAnswer): Drawing[] {
    return [
      {
        title: msg('Energy over time'),
        traces: energyTraces(answer, this.sources),
        axes: energyAxes,
        caption: msg('From the arrival on, against the strongest moment.'),
      },
      {
        title: msg('Step response'),
        traces: stepTraces(answer, this.sources),
        axes: stepAxes,
        caption: '',
      },
    ];
  }

  private ranges() {
    const button = (range: 'low' | 'full', words: string) =>
      html`<button
        type="button"
        aria-pressed=${this.range === range ? 'true' : 'false'}
        @click=${() => (this.range = range)}
      >
        ${words}
      </button>`;
    return html`<div class="range" role="group" aria-label=${msg('Frequencies shown')}>
      ${button('low', msg('Low end'))}${button('full', msg('Whole range'))}
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-curves-view': CurvesView;
  }
}
