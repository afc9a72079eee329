import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { GroupProposal } from '../../src/proposal/proposal';
import type { ChannelReading } from '../../src/reading/reading';
import type { Bench } from '../../src/session/bench';
import type { SessionDocument } from '../../src/session/document';
import type { ChannelLabel, GroupId } from '../../src/system/channel';
import { BenchController } from '../bench-controller';
import { hzText } from '../charts/number-text';
import { buttonStyles } from '../controls/button-styles';
import { sharedStyles } from '../theme/shared-styles';
import './crossover-steps';
import { proposeView } from './propose-view';
import { stepPrice } from './step-price';

/** Why this crossover: its reason, the other steps, and the price of choosing one of them. */
@customElement('ll-why-crossover')
export class WhyCrossover extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-3);
      }

      [role='status']:empty {
        position: absolute;
      }

      .price {
        display: grid;
        gap: var(--space-2);
        justify-items: start;
        padding: var(--space-3);
        border-left: 4px solid var(--signal);
        background: var(--wash);
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) selected: ChannelLabel | null = null;
  private readonly follow = new BenchController(this);

  private set(group: GroupId, stepHz: number | null): void {
    const name = stepHz === null ? 'Keep proposed crossover' : 'Choose crossover';
    this.bench?.change(name, (document) => withCrossover(document, group, stepHz));
  }

  override render() {
    const { state } = this.follow;
    const view = state && proposeView(state, this.selected);
    const proposal = view?.groupProposal;
    if (!state || !proposal) return nothing;
    const { group, crossoverHz: proposedHz, decidedBy } = proposal;
    const stands = state.layout.channels.some(({ kind }) => kind === 'sub');
    const decider = view.readings.channels.find(({ channel }) => channel === decidedBy) ?? null;
    return html`<h2>${whyTitle(proposal, stands)}</h2>
      <p>${proposal.reason}</p>
      ${proposal.warnings.map((warning) => html`<p class="signal">${warning}</p>`)}
      ${
        stands
          ? html`<ll-crossover-steps
                .proposal=${proposal}
                .stepsHz=${state.document.processor.crossoverHz}
                .crossoverHz=${view.crossoverHz}
                @ll-step=${(event: CustomEvent<number>) =>
                  this.set(group, event.detail === proposedHz ? null : event.detail)}
              ></ll-crossover-steps>
              <div role="status">${this.price(proposal, view.chosenHz, decider)}</div>
              <p class="soft small">
                Margin: how far the step lies above the −3 dB of ${decidedBy ?? 'the speaker'}.
                Practice: −3 dB plus 10 to 20 Hz, worst speaker, next step upward. Measured: 1.25
                times the −6 dB point at its 80 % quantile.
              </p>`
          : nothing
      }`;
  }

  private price(proposal: GroupProposal, chosenHz: number | null, decider: ChannelReading | null) {
    const { group, crossoverHz } = proposal;
    if (chosenHz === null || chosenHz === crossoverHz) return nothing;
    return html`<div class="price">
      <p><b>You set ${hzText(chosenHz)}.</b> ${stepPrice(chosenHz, proposal, decider)}</p>
      <button class="ghost" @click=${() => this.set(group, null)}>
        ${crossoverHz === null ? 'Set none' : `Back to ${hzText(crossoverHz)}`}
      </button>
    </div>`;
  }
}

function whyTitle({ crossoverHz, decidedBy }: GroupProposal, hasSubs: boolean): string {
  if (!hasSubs) return 'Why full range';
  if (crossoverHz === null) return 'Why none';
  return decidedBy === null
    ? `Why ${hzText(crossoverHz)}, for now`
    : `Why ${hzText(crossoverHz)}, and not another step`;
}

/** The document with a group's crossover chosen, or left to the proposal when null. */
export function withCrossover(
  document: SessionDocument,
  group: GroupId,
  stepHz: number | null,
): SessionDocument {
  const chosen = Object.entries(document.chosenCrossoverHz).filter(([key]) => key !== group);
  return {
    ...document,
    chosenCrossoverHz: Object.fromEntries(
      stepHz === null ? chosen : [...chosen, [group, stepHz] as const],
    ),
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'll-why-crossover': WhyCrossover;
  }
}
