import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench } from '../../../src/session/bench';
import '../../charts/workbench/workbench-chart';
import { buttonStyles } from '../../controls/button-styles';
import '../../controls/step-slider';
import { sharedStyles } from '../../theme/shared-styles';
import { Kept } from '../../kept';
import type { ProposeView } from '../propose-view';
import { subDelayMarks, subDelayRange, subDelayText } from '../subs/sub-delay';
import { ledgerText } from '../bass/ledger-words';
import { sumText } from './sum-words';
import { workbenchHandles } from './workbench-handles';
import type { WorkbenchState } from './workbench-state';
import { workbenchAxes, workbenchBands, workbenchTraces } from './workbench-traces';
import { workbenchWishes, type WorkbenchWishes, type WorkbenchZoom } from './workbench-wishes';

const zooms: readonly { readonly zoom: WorkbenchZoom; readonly text: string }[] = [
  {
    zoom: 'whole bass',
    get text() {
      return msg('Whole bass');
    },
  },
  {
    zoom: 'low end',
    get text() {
      return msg('Low end');
    },
  },
  {
    zoom: 'about the crossover',
    get text() {
      return msg('About the crossover');
    },
  },
];

/** The chart of a speaker and the subs with its handles, and what the sum loses. */
@customElement('ll-workbench')
export class WorkbenchPane extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      :host {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--space-3);
      }

      .bar {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-2) var(--space-3);
      }

      .bar div {
        display: inline-flex;
        flex-wrap: wrap;
      }

      .bar button {
        min-height: 2rem;
        padding: 0.25rem 0.7rem;
        border: var(--line) solid var(--edge);
        border-radius: var(--radius);
        background: none;
        font-size: var(--text-small);
      }

      .bar button + button {
        margin-inline-start: 2px;
      }

      .bar button[aria-pressed='true'] {
        background: var(--ink);
        border-color: var(--ink);
        color: var(--on-ink);
      }

      .sum {
        display: flex;
        flex-wrap: wrap;
        gap: 0 var(--space-5);
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) view: ProposeView | null = null;
  @property({ attribute: false }) now: WorkbenchState | null = null;
  private readonly drawn = new Kept<ReturnType<WorkbenchPane['chart']>>();

  override render() {
    const { view, now, bench } = this;
    if (!view || !now || !bench) return nothing;
    const wishes = workbenchWishes.of(bench);
    const { traces, bands, axes, handles } = this.drawn.of([view.channel, now, wishes], () =>
      this.chart(view, now, wishes),
    );
    const { channel } = view;
    const subs = now.input.curves?.subs ? msg(' with the subs') : '';
    return html`${this.bar(wishes)}
      <ll-workbench-chart
        .traces=${traces}
        .bands=${bands}
        .axes=${axes}
        .handles=${handles}
        .label=${msg(str`Response of ${channel}${subs}`)}
      ></ll-workbench-chart>
      <p class="sum num small" role="status">
        <span>${view.coming ? msg('Being worked out') : sumText(now.sum)}</span>
        <span>${ledgerText(now.ledger)}</span>
        ${
          now.proposedSum
            ? html`<span class="soft">${msg(str`As proposed. ${sumText(now.proposedSum)}`)}</span>`
            : nothing
        }
      </p>
      ${this.delay(view, now)}
      <p class="soft small">${note(now)}</p>`;
  }

  private chart(view: ProposeView, now: WorkbenchState, wishes: WorkbenchWishes) {
    const { input, choices, settings } = now;
    return {
      traces: workbenchTraces(input, wishes),
      bands: workbenchBands(input),
      // About the crossover in force: it would run away under the hand if it followed the drag.
      axes: workbenchAxes(input, wishes, view.settings.crossoverHz[view.group.group] ?? null),
      handles: workbenchHandles(view, choices, settings),
    };
  }

  private bar(wishes: WorkbenchWishes) {
    const button = (text: string, pressed: boolean, change: Partial<WorkbenchWishes>) =>
      html`<button aria-pressed=${pressed ? 'true' : 'false'} @click=${() => this.wish(change)}>
        ${text}
      </button>`;
    const { zoom, spanDb, filters, seats } = wishes;
    return html`<div class="bar">
      <div role="group" aria-label=${msg('Frequencies shown')}>
        ${zooms.map((one) => button(one.text, one.zoom === zoom, { zoom: one.zoom }))}
      </div>
      <div role="group" aria-label=${msg('Shown')}>
        ${button(msg('Fine dB'), spanDb === 24, { spanDb: spanDb === 24 ? 42 : 24 })}
        ${button(msg('Filters'), filters, { filters: !filters })}
        ${button(msg('Each seat'), seats, { seats: !seats })}
      </div>
    </div>`;
  }

  private wish(change: Partial<WorkbenchWishes>): void {
    const { bench } = this;
    if (!bench) return;
    workbenchWishes.keep(bench, { ...workbenchWishes.of(bench), ...change });
    this.requestUpdate();
  }

  private delay(view: ProposeView, { choices, settings, crossoverHz }: WorkbenchState) {
    const range = subDelayRange(view);
    if (!range || crossoverHz === null) return nothing;
    const { stepSeconds, most } = range;
    const unit = view.workbench.abilities.distanceUnit;
    return html`<ll-step-slider
      name="delay"
      label=${msg('All subs later or earlier')}
      .min=${-most}
      .max=${most}
      .value=${Math.round(choices.subsLaterSeconds / stepSeconds)}
      .marks=${subDelayMarks(view, range)}
      .text=${subDelayText(view.proposal, choices, settings, unit)}
    ></ll-step-slider>`;
  }
}

function note({ input, crossoverHz }: WorkbenchState): string {
  const { curves } = input;
  if (!curves) {
    return msg(
      '1/24 octave, decibels relative to the mean of 500 to 2000 Hz. The bass of this speaker and the subs was not captured together, so no sum can be drawn.',
    );
  }
  const seats = curves.seats.length;
  const where = seats === 1 ? msg('at one seat') : msg(str`at ${seats} seats`);
  const drawn = msg(
    str`1/12 octave, ${where}, decibels relative to the speaker’s own mean from 180 to 480 Hz.`,
  );
  const beside =
    crossoverHz === null
      ? msg('Full range, the subs play nothing of it.')
      : msg(
          'What is lost and the dip are held against speaker and subs in phase instead, a line that is not drawn: a hollow of the room is no dip.',
        );
  return `${drawn} ${beside}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-workbench': WorkbenchPane;
  }
}
