import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench, BenchState } from '../../../src/session/bench';
import { isTrouble } from '../../../src/trouble';
import { BenchController } from '../../bench-controller';
import { durationText } from '../../../src/locale/number-text';
import { buttonStyles } from '../../controls/button-styles';
import { sharedStyles } from '../../theme/shared-styles';
import { plannedTakes } from '../routing/route-preview';
import { currentReadings } from './take-lanes';

/** The button that starts a take, and how long it will last. */
@customElement('ll-take-run')
export class TakeRun extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-2);
      }

      :host([hidden]) {
        display: none;
      }

      button {
        justify-self: start;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);

  override render() {
    const { state } = this.follow;
    this.hidden = state?.document.rig === 'recording';
    if (!state || this.hidden) return nothing;
    const again = currentReadings(state) !== null;
    return html`<button
        class=${state.toRepeat.length > 0 ? 'ghost' : 'go'}
        ?disabled=${state.activity.kind !== 'idle' || isTrouble(plannedTakes(state))}
        @click=${() => void this.bench?.startTake()}
      >
        ${again ? msg('Run the take again') : msg('Run the take')}
      </button>
      <p class="soft small">${lengthSentence(state)}</p>`;
  }
}

function lengthSentence(state: BenchState): string {
  const plan = plannedTakes(state);
  if (isTrouble(plan)) return plan.sentence;
  const seconds = plan.parts.reduce(
    (sum, { schedule }) => sum + schedule.lengthSamples / schedule.sampleRate,
    0,
  );
  const lasts =
    plan.parts.length === 1
      ? msg(str`The take lasts ${durationText(seconds)}`)
      : msg(
          str`${plan.parts.length} takes, ${durationText(seconds)} together, with a stop between them`,
        );
  return state.document.rig === 'practice'
    ? msg(str`${lasts}; the practice room computes it faster.`)
    : `${lasts}.`;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-take-run': TakeRun;
  }
}
