import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench } from '../../src/session/bench';
import type { ChannelLabel } from '../../src/system/channel';
import { BenchController } from '../bench-controller';
import { buttonStyles } from '../controls/button-styles';
import '../probe/take/take-progress';
import '../probe/take/waiting-card';
import { sharedStyles } from '../theme/shared-styles';
import { stageStyles } from '../theme/stage-styles';
import './before-after';
import './proof-lines';
import './proof-start';

/** The first sheet of Prove: what is proved and how, then a line per claim, and before and after. */
@customElement('ll-proof-sheet')
export class ProofSheet extends LitElement {
  static override styles = [
    sharedStyles,
    stageStyles,
    buttonStyles,
    css`
      .ghost {
        justify-self: start;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) selected: ChannelLabel | null = null;
  private readonly follow = new BenchController(this);

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    const { bench, selected } = this;
    const { activity, proof, proving } = state;
    const start = html`<section class="sheet" aria-label=${msg('Prove')}>
      <ll-proof-start .bench=${bench}></ll-proof-start>
    </section>`;
    if (activity.kind === 'waiting') {
      return html`<ll-waiting-card .bench=${bench}></ll-waiting-card>`;
    }
    // The title says that it is being judged: nothing to press meanwhile.
    if (proving && !proof && activity.kind !== 'playing') return nothing;
    if (activity.kind === 'playing' || activity.kind === 'reading') {
      return html`<section class="sheet" aria-label=${msg('Take')}>
        <ll-take-progress .bench=${bench}></ll-take-progress>
      </section>`;
    }
    if (!proof) return start;
    return html`<div class="sheets">
      <section class="sheet" aria-labelledby="lines">
        <h2 id="lines">${msg(str`What was found${proof.simulated ? msg(' (simulated)') : ''}`)}</h2>
        ${
          proof.toRepeat.length === 0
            ? nothing
            : html`<p class="signal">
                  ${msg(str`Came out damaged: ${proof.toRepeat.join(', ')}. What is said of them is to be distrusted until they are played again.`)}
                </p>
                ${
                  state.document.rig === 'recording'
                    ? nothing
                    : html`<button
                        class="ghost"
                        ?disabled=${activity.kind !== 'idle'}
                        @click=${() => void bench?.startProof(proof.toRepeat)}
                      >
                        ${msg(str`Repeat ${proof.toRepeat.join(', ')}`)}
                      </button>`
                }`
        }
        <ll-proof-lines .bench=${bench}></ll-proof-lines>
      </section>
      ${start}
      <section class="sheet wide" aria-label=${msg('Before and after')}>
        <ll-before-after .bench=${bench} .selected=${selected}></ll-before-after>
      </section>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-proof-sheet': ProofSheet;
  }
}
