import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { LedgerMend } from '../../../src/proposal/ledger-proposal';
import type { ProposalChoices } from '../../../src/proposal/choices';
import type { Bench } from '../../../src/session/bench';
import type { GroupId } from '../../../src/system/channel';
import { hzWith } from '../../../src/workbench/try-settings';
import { hzText } from '../../../src/locale/number-text';
import type { HandleMove } from '../../charts/workbench/chart-handle';
import '../../controls/choice';
import { askToSelect } from '../../events';
import { sharedStyles } from '../../theme/shared-styles';
import { stageStyles } from '../../theme/stage-styles';
import '../bass/bass-ledger';
import '../bass/ledger-mends';
import { changeChoices, groupsSetBy, withCrossover, withMend } from '../choices/change-choices';
import { groupName } from '../group-words';
import { Kept } from '../../kept';
import type { ProposeView } from '../propose-view';
import { subDelayRange } from '../subs/sub-delay';
import type { WantedCrossover } from './why-crossover';
import './why-crossover';
import './workbench';
import {
  proposedState,
  workbenchState,
  type ProposedState,
  type WorkbenchState,
} from './workbench-state';

/** The first sheet of Propose: a group's crossover, the sum with the subs, and the bass ledger. */
@customElement('ll-crossovers-sheet')
export class CrossoversSheet extends LitElement {
  static override styles = [
    sharedStyles,
    stageStyles,
    css`
      .ledger {
        display: grid;
        gap: var(--space-4);
        grid-template-columns: minmax(0, 1fr);
      }

      @container (min-width: 52rem) {
        .sheets {
          grid-template-columns: minmax(0, 1fr) minmax(0, 25rem);
        }

        .ledger {
          grid-template-columns: minmax(0, 1fr) minmax(0, 24rem);
          gap: var(--space-5);
        }
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) view: ProposeView | null = null;
  /** Choices while a handle is held. */
  @state() private held: ProposalChoices | null = null;
  private readonly kept = new Kept<WorkbenchState>();
  private readonly asProposed = new Kept<ProposedState>();

  override render() {
    const { view, bench } = this;
    if (!view || !bench) return nothing;
    const now = this.now(view);
    const { proposal, layout, readings } = view;
    const { ledger } = proposal;
    const hasSubs = layout.channels.some(({ kind }) => kind === 'sub');
    return html`${this.picker(view, now)}
      <div class="sheets">
        <section class="sheet" aria-labelledby="response">
          <h2 id="response">${chartTitle(view)}</h2>
          <ll-workbench
            .bench=${bench}
            .view=${view}
            .now=${now}
            @ll-move=${(event: CustomEvent<HandleMove>) => this.move(view, event.detail)}
          ></ll-workbench>
        </section>
        <section class="sheet" aria-label=${msg('Why')}>
          <ll-why-crossover
            .view=${view}
            .crossoverHz=${now.crossoverHz}
            @ll-crossover=${(event: CustomEvent<WantedCrossover>) => this.set(view, event.detail)}
          ></ll-why-crossover>
        </section>
        <section class="sheet wide" aria-labelledby="ledger">
          <h2 id="ledger">${msg('Bass ledger: where each channel’s low end goes')}</h2>
          <div class="ledger">
            <ll-bass-ledger
              .lines=${now.ledger}
              .unknown=${ledger.proposed.unknown}
              .layout=${layout}
              .carrier=${hasSubs ? 'subs' : 'fronts'}
              .lfeHz=${proposal.lfe.lowPassHz}
            ></ll-bass-ledger>
            <ll-ledger-mends
              .ledger=${ledger.own ?? ledger.proposed}
              .layout=${layout}
              .readings=${readings}
              @ll-mend=${(event: CustomEvent<LedgerMend['change']>) => {
                const chosen = withMend(view.choices, event.detail, proposal.groups);
                changeChoices(bench, msg('Mend the bass ledger'), chosen);
              }}
            ></ll-ledger-mends>
          </div>
        </section>
      </div>`;
  }

  private now(view: ProposeView): WorkbenchState {
    const choices = this.held ?? view.choices;
    const { proposal, workbench, channel, group, made } = view;
    const same = [workbench, channel, group.group, JSON.stringify(view.proposed)];
    const asProposed = this.asProposed.of(same, () => proposedState(view));
    return this.kept.of([asProposed, proposal, JSON.stringify([made, choices])], () =>
      workbenchState(view, choices, asProposed),
    );
  }

  private move(view: ProposeView, { id, value, done }: HandleMove): void {
    const chosen = this.moved(view, id, value);
    // In this order: the view with the new choices comes before this draws without those held, which
    // would show the old ones once more.
    if (done) changeChoices(this.bench, moveNames[id] ?? msg('Choose settings'), chosen);
    this.held = done ? null : chosen;
  }

  private moved({ choices, group, proposal, workbench }: ProposeView, id: string, value: number) {
    if (id === 'crossover') {
      const groups = groupsSetBy(proposal.groups, group.group, workbench.abilities.oneCrossover);
      return withCrossover(choices, groups, value);
    }
    if (id === 'low-pass') {
      return { ...choices, subLowPassHz: value === proposal.subs?.lowPass.hz ? null : value };
    }
    const { stepSeconds = 0 } = (this.view && subDelayRange(this.view)) ?? {};
    return { ...choices, subsLaterSeconds: value * stepSeconds };
  }

  private set(view: ProposeView, { group, hz }: WantedCrossover): void {
    const { choices, proposal, workbench } = view;
    const groups = groupsSetBy(proposal.groups, group, workbench.abilities.oneCrossover);
    changeChoices(this.bench, moveNames['crossover'] ?? '', withCrossover(choices, groups, hz));
  }

  private picker({ proposal, layout, group }: ProposeView, { choices }: WorkbenchState) {
    const options = proposal.groups.map((one) => {
      const hz = hzWith(one, choices);
      return {
        value: one.group,
        label: groupName(one.group, layout),
        hint: hz === null ? msg('full range') : hzText(hz),
      };
    });
    return html`<ll-choice
      label=${msg('Group of speakers')}
      .options=${options}
      .value=${group.group}
      @ll-pick=${(event: CustomEvent<string>) => this.pick(event.detail)}
    ></ll-choice>`;
  }

  private pick(picked: GroupId | string): void {
    const found = this.view?.proposal.groups.find(({ group }) => group === picked);
    askToSelect(this, found?.decidedBy ?? found?.channels[0] ?? null);
  }
}

const moveNames: Readonly<Record<string, string>> = {
  get crossover() {
    return msg('Choose crossover');
  },
  get 'low-pass'() {
    return msg('Choose sub low-pass');
  },
  get delay() {
    return msg('Move the subs in time');
  },
};

function chartTitle({ channel, readings, workbench }: ProposeView): string {
  const alone = !workbench.field?.mains.has(channel);
  const what = alone ? msg('at the seat') : msg('with the subs');
  return msg(str`Response of ${channel} ${what}${readings.simulated ? msg(' (simulated)') : ''}`);
}

declare global {
  interface HTMLElementTagNameMap {
    'll-crossovers-sheet': CrossoversSheet;
  }
}
