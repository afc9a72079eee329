import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type {
  CrossoverAlternative,
  FullRangeAdvice,
  GroupProposal,
} from '../../../src/proposal/proposal';
import { proposedHz } from '../../../src/workbench/try-settings';
import { hzText, numberText } from '../../../src/locale/number-text';
import { buttonStyles } from '../../controls/button-styles';
import { RevealController } from '../../controls/reveal-controller';
import { sharedStyles } from '../../theme/shared-styles';
import { proposeSheetAddress } from '../propose-sheets';
import { stepNotes } from './step-words';

type Step = CrossoverAlternative;

/** How a group stands to playing all of its range itself. */
const adviceWords: Readonly<Record<FullRangeAdvice['kind'], () => string>> = {
  forced: () => msg('forced'),
  possible: () => msg('possible'),
  'too small': () => msg('too small'),
  'cannot tell': () => msg('cannot tell'),
  locked: () => msg('locked'),
  'not offered': () => msg('not offered'),
};

/** Kinds of advice under which a group may run full range by the tuner's wish. */
const offered = ['possible', 'too small', 'cannot tell', 'forced'];

/**
 * The processor's steps to choose from, with what speaks for and against each. Fires `ll-step` with
 * the step in Hz, or null for full range.
 */
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
        white-space: nowrap;
        cursor: pointer;
      }

      label:has(:disabled) {
        cursor: not-allowed;
        color: var(--soft);
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
        padding-inline: 0.3rem;
        vertical-align: middle;
      }

      td:first-child {
        padding-inline-start: 0.2rem;
      }

      td.note {
        text-align: left;
        font-size: var(--text-small);
        line-height: 1.25;
      }

      td.num {
        white-space: nowrap;
      }
    `,
  ];

  @property({ attribute: false }) proposal: GroupProposal | null = null;
  /** Steps of the processor, for a group of which nothing is known. */
  @property({ attribute: false }) stepsHz: readonly number[] = [];
  /** In force; null for full range. */
  @property({ attribute: false }) crossoverHz: number | null = null;
  @state() private all = false;

  constructor() {
    super();
    new RevealController(this, proposeSheetAddress('crossovers'));
  }

  private steps(proposal: GroupProposal): readonly Step[] {
    if (proposal.alternatives.length > 0) return proposal.alternatives;
    return this.stepsHz.map((stepHz) => ({
      stepHz,
      marginHz: null,
      practice: stepHz === proposal.practiceHz,
      measured: stepHz === proposal.measuredHz,
      breaks: [],
      localised: false,
      sum: null,
    }));
  }

  /** The step in force is where a link to the crossover of the group leads. */
  private placeOf(inForce: boolean): string {
    return inForce ? (this.proposal?.group ?? '') : '';
  }

  private choose(detail: number | null): void {
    this.dispatchEvent(new CustomEvent('ll-step', { detail, bubbles: true, composed: true }));
  }

  override render() {
    const { proposal } = this;
    if (!proposal) return nothing;
    const steps = this.steps(proposal);
    const near = this.all
      ? steps
      : nearSteps(steps, [proposedHz(proposal), proposal.measuredHz, this.crossoverHz]);
    return html`<table>
        <caption class="unseen">
          ${msg('Crossover steps of the processor')}
        </caption>
        <thead>
          <tr>
            <th scope="col">${msg('Step')}</th>
            <th scope="col">${msg('Over −3 dB, Hz')}</th>
            <th scope="col">${msg('Dip, dB')}</th>
            <th scope="col">${msg('Lost, dB')}</th>
            <th scope="col" class="left">${msg('Rule, limit')}</th>
          </tr>
        </thead>
        <tbody>
          ${near.map((step) => this.row(step, step.stepHz === proposedHz(proposal)))}
          ${this.fullRange(proposal)}
        </tbody>
      </table>
      ${
        near.length < steps.length
          ? html`<button class="plain" @click=${() => (this.all = true)}>
              ${msg(str`Show all ${steps.length} steps`)}
            </button>`
          : nothing
      }`;
  }

  private row(step: Step, proposed: boolean) {
    const { stepHz, marginHz, sum, breaks } = step;
    const inForce = stepHz === this.crossoverHz;
    const notes = stepNotes(step);
    return html`<tr
      class=${inForce ? 'pick' : ''}
      data-step=${stepHz}
      data-place=${this.placeOf(inForce)}
    >
      <td class="num">
        <label>
          <input
            type="radio"
            name="step"
            .checked=${inForce}
            @change=${() => this.choose(stepHz)}
          />
          ${hzText(stepHz)}${proposed ? html`<span class="unseen">${msg(', proposed')}</span>` : nothing}
        </label>
      </td>
      <td class="num">${numberText(marginHz)}</td>
      <td class="num">${numberText(sum?.dipDb, 1)}</td>
      <td class="num">${numberText(sum?.lossDb, 1)}</td>
      <td class="note ${breaks.length > 0 ? 'signal' : ''}">
        ${proposed ? html`<b>${msg('proposed')}</b>${notes === '' ? '' : ', '}` : nothing}${notes}
      </td>
    </tr>`;
  }

  private fullRange({ fullRange }: GroupProposal) {
    const inForce = this.crossoverHz === null;
    const can = offered.includes(fullRange.kind) || inForce;
    return html`<tr
      class=${inForce ? 'pick' : ''}
      data-step="full range"
      data-place=${this.placeOf(inForce)}
    >
      <td colspan="4">
        <label>
          <input
            type="radio"
            name="step"
            .checked=${inForce}
            ?disabled=${!can}
            @change=${() => this.choose(null)}
          />
          ${msg('Full range')}
        </label>
      </td>
      <td class="note">${adviceWords[fullRange.kind]()}</td>
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

declare global {
  interface HTMLElementTagNameMap {
    'll-crossover-steps': CrossoverSteps;
  }
  interface HTMLElementEventMap {
    'll-step': CustomEvent<number | null>;
  }
}
