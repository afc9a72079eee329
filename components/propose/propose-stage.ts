import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench, BenchState } from '../../src/session/bench';
import type { ChannelLabel, GroupId } from '../../src/system/channel';
import { BenchController } from '../bench-controller';
import { hzText } from '../charts/number-text';
import '../charts/response-chart';
import { traceOf, type ResponseTrace } from '../charts/response-trace';
import { buttonStyles } from '../controls/button-styles';
import '../controls/choice';
import { askToGo, askToSelect } from '../events';
import { groupColour } from '../group-colour';
import { sayList } from '../../src/proposal/phrases';
import { sharedStyles } from '../theme/shared-styles';
import { stageStyles } from '../theme/stage-styles';
import { groupName } from './group-words';
import { missingTitle, proposeTitle } from './propose-title';
import { crossoverInForce, proposeView, type ProposeView } from './propose-view';
import './settings-table';
import './why-crossover';

/** Stage 4: numbers to type, each with its reason. */
@customElement('ll-propose')
export class ProposeStage extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    stageStyles,
    css`
      .none {
        display: grid;
        gap: var(--space-4);
        justify-items: start;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) selected: ChannelLabel | null = null;
  private readonly follow = new BenchController(this);
  private kept: { members: ProposeView['members']; traces: ResponseTrace[] } | null = null;

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    const view = proposeView(state, this.selected);
    if (!view) return this.missing(state);
    const { title, lede } = proposeTitle(view, state.layout);
    return html`<div class="lede">
        <h1>${title}</h1>
        <p>${lede}</p>
      </div>
      ${this.picker(view, state)}
      <div class="sheets">
        <section class="sheet ${view.groupProposal ? '' : 'wide'}" aria-labelledby="response">
          <h2 id="response">${chartTitle(view)}</h2>
          ${this.chart(view)}
        </section>
        ${
          view.groupProposal
            ? html`<section class="sheet" aria-label="Why">
                <ll-why-crossover .bench=${this.bench} .selected=${this.selected}>
                </ll-why-crossover>
              </section>`
            : nothing
        }
        <section class="sheet wide" aria-labelledby="settings">
          <h2 id="settings">
            Type these into the processor${view.proposal.simulated ? ' (simulated)' : ''}
          </h2>
          <ll-settings-table .bench=${this.bench} .selected=${this.selected}></ll-settings-table>
        </section>
      </div>`;
  }

  private missing(state: BenchState) {
    const { title, lede } = missingTitle(state);
    return html`<div class="none">
      <div class="lede">
        <h1>${title}</h1>
        <p>${lede}</p>
      </div>
      <button class="go" @click=${() => askToGo(this, 'probe')}>Go to Probe</button>
    </div>`;
  }

  private picker({ groups, group, proposal, readings }: ProposeView, state: BenchState) {
    const without = groups.includes('subs') ? 'none' : 'full range';
    const options = groups.map((one) => {
      const hz = crossoverInForce(state, one);
      return {
        value: one,
        label: groupName(one, state.layout),
        ...(one === 'subs' ? {} : { hint: hz === null ? without : hzText(hz) }),
      };
    });
    const pick = (picked: GroupId) => {
      const first = state.layout.channels.find((channel) => channel.group === picked);
      const decider = proposal.groups.find((one) => one.group === picked)?.decidedBy;
      const known = readings.channels.some(({ channel }) => channel === decider);
      askToSelect(this, (known ? decider : first?.label) ?? null);
    };
    return html`<ll-choice
      label="Group of speakers"
      .options=${options}
      .value=${group}
      @ll-pick=${(event: CustomEvent<string>) => {
        const picked = groups.find((one) => one === event.detail);
        if (picked) pick(picked);
      }}
    ></ll-choice>`;
  }

  private chart({ members, group, crossoverHz, groupProposal }: ProposeView) {
    const traces = this.tracesOf(members, group);
    if (traces.length === 0) {
      return html`<p class="soft">
        No response could be read of ${sayList(members.map(({ channel }) => channel))}.
      </p>`;
    }
    return html`<ll-response-chart
        .traces=${traces}
        .crossoverHz=${group === 'subs' ? null : crossoverHz}
        .proposedHz=${groupProposal?.crossoverHz ?? null}
      ></ll-response-chart>
      <p class="soft small">
        1/24 octave, decibels relative to the mean of
        ${group === 'subs' ? '40 to 80' : '500 to 2000'} Hz.
      </p>`;
  }

  /** The same traces as long as the readings are the same, so that the chart need not redraw. */
  private tracesOf(members: ProposeView['members'], group: GroupId): ResponseTrace[] {
    const kept = this.kept;
    if (
      kept?.members.length === members.length &&
      kept.members.every((member, i) => member === members[i])
    ) {
      return kept.traces;
    }
    const traces = members.flatMap((member) => traceOf(member, groupColour(group)) ?? []);
    this.kept = { members, traces };
    return traces;
  }
}

function chartTitle({ members, readings }: ProposeView): string {
  const names = sayList(members.map(({ channel }) => channel));
  return `Response of ${names} at the seat${readings.simulated ? ' (simulated)' : ''}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-propose': ProposeStage;
  }
}
