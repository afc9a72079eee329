import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { GroupProposal } from '../../src/proposal/proposal';
import { hzText, numberText } from '../charts/number-text';
import { buttonStyles } from '../controls/button-styles';
import { sharedStyles } from '../theme/shared-styles';

interface Step {
  readonly stepHz: number;
  readonly marginHz: number | null;
  readonly practice: boolean;
  readonly measured: boolean;
}

/** The processor's steps to choose from, with margin and rules. Fires `ll-step` with the step, Hz. */
@customElement('ll-crossover-steps')
export class CrossoverSteps extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      :host {
        display: block;
        position: relative;
      }

      .plain {
        font-size: var(--text-small);
        min-height: 2rem;
      }

      label {
        display: flex;
        gap: var(--space-2);
        align-items: center;
        min-height: 2rem;
        cursor: pointer;
      }

      input {
        width: 1.1rem;
        height: 1.1rem;
        margin: 0;
        accent-color: var(--signal);
      }

      td,
      th {
        padding-block: 0;
        vertical-align: middle;
      }

      td.rule {
        text-align: left;
      }
    `,
  ];

  @property({ attribute: false }) proposal: GroupProposal | null = null;
  /** Steps of the processor, for a group without alternatives. */
  @property({ attribute: false }) stepsHz: readonly number[] = [];
  @property({ attribute: false }) crossoverHz: number | null = null;
  @state() private all = false;

  private steps(): Step[] {
    const { proposal } = this;
    if (proposal && proposal.alternatives.length > 0) return [...proposal.alternatives];
    return this.stepsHz.map((stepHz) => ({
      stepHz,
      marginHz: null,
      practice: stepHz === proposal?.practiceHz,
      measured: stepHz === proposal?.measuredHz,
    }));
  }

  private choose(stepHz: number): void {
    this.dispatchEvent(
      new CustomEvent('ll-step', { detail: stepHz, bubbles: true, composed: true }),
    );
  }

  override render() {
    const { proposal } = this;
    if (!proposal) return nothing;
    const steps = this.steps();
    const near = this.all ? steps : nearSteps(steps, [proposal.crossoverHz, this.crossoverHz]);
    return html`<table>
        <caption class="unseen">
          Crossover steps of the processor
        </caption>
        <thead>
          <tr>
            <th scope="col">Step</th>
            <th scope="col">Margin</th>
            <th scope="col" class="left">Rule</th>
          </tr>
        </thead>
        <tbody>
          ${near.map((step) => this.row(step, step.stepHz === proposal.crossoverHz))}
        </tbody>
      </table>
      ${
        near.length < steps.length
          ? html`<button class="plain" @click=${() => (this.all = true)}>
              Show all ${steps.length} steps
            </button>`
          : nothing
      }`;
  }

  private row({ stepHz, marginHz, practice, measured }: Step, proposed: boolean) {
    const inForce = stepHz === this.crossoverHz;
    return html`<tr class=${inForce ? 'pick' : ''}>
      <td class="num">
        <label>
          <input
            type="radio"
            name="step"
            .checked=${inForce}
            @change=${() => this.choose(stepHz)}
          />
          ${hzText(stepHz)}${proposed ? html`<span class="unseen">, proposed</span>` : nothing}
        </label>
      </td>
      <td class="num">${marginHz === null ? '–' : `${numberText(marginHz)}\u202fHz`}</td>
      <td class="rule">${ruleWords(practice, measured)}</td>
    </tr>`;
  }
}

const stepsBelow = 2;
const stepsAbove = 3;

/** The steps around the ones that matter; all of them when none matters or few are left out. */
function nearSteps(steps: readonly Step[], matter: readonly (number | null)[]): readonly Step[] {
  const indices = matter
    .map((hz) => steps.findIndex(({ stepHz }) => stepHz === hz))
    .filter((index) => index >= 0);
  if (indices.length === 0) return steps;
  const first = Math.max(0, Math.min(...indices) - stepsBelow);
  const near = steps.slice(first, Math.max(...indices) + stepsAbove + 1);
  return steps.length - near.length < 2 ? steps : near;
}

function ruleWords(practice: boolean, measured: boolean): string {
  if (practice && measured) return 'both';
  if (measured) return 'measured';
  return practice ? 'practice' : '';
}

declare global {
  interface HTMLElementTagNameMap {
    'll-crossover-steps': CrossoverSteps;
  }
  interface HTMLElementEventMap {
    'll-step': CustomEvent<number>;
  }
}
