import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Proposal } from '../../src/proposal/proposal';
import { settingsList } from '../../src/proposal/settings-list';
import type { Bench, BenchState } from '../../src/session/bench';
import { BenchController } from '../bench-controller';
import { buttonStyles } from '../controls/button-styles';
import '../probe/take/recording-rig';
import { missingTitle } from '../propose/propose-title';
import { sharedStyles } from '../theme/shared-styles';
import { whatHolds } from './what-holds';

/** What is typed and what will be proved, what to mind, and the button that starts it. */
@customElement('ll-proof-start')
export class ProofStart extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      :host {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--space-3);
        justify-items: start;
      }

      ul {
        display: grid;
        gap: var(--space-1);
        padding-left: 1.1rem;
      }

      ll-recording-rig {
        justify-self: stretch;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    const { proposal, proof, readings } = state;
    if (!proposal && readings?.layout === state.layout.name) {
      return html`<p role="status">${missingTitle(state).lede}</p>`;
    }
    if (!proposal) {
      return html`<p>${msg('Settings come from a take: run one first.')}</p>
        <a class="go" href="#probe/take">${msg('Go to Probe')}</a>`;
    }
    return html`<h2>${msg('Typed first')}</h2>
      ${typed(state, proposal)}
      <h2>${msg('Then it must hold')}</h2>
      <ul>
        ${whatHolds(state).map((sentence) => html`<li>${sentence}</li>`)}
      </ul>
      <p class="small">
        ${msg('All speakers sweep through the processor, as loud as it will play: start with the volume low, and leave the room or protect your ears. The microphone stands where it stood in Probe.')}
      </p>
      ${
        state.document.rig === 'recording'
          ? html`<ll-recording-rig .bench=${this.bench} purpose="prove"></ll-recording-rig>`
          : html`<button
                class=${proof ? 'ghost' : 'go'}
                ?disabled=${state.activity.kind !== 'idle' || proposal.sums !== 'there'}
                @click=${() => void this.bench?.startProof()}
              >
                ${proof ? msg('Prove all again') : msg('Prove')}
              </button>
              ${
                proposal.sums !== 'there'
                  ? html`<p class="small soft" role="status">
                      ${msg('The settings are still being worked out.')}
                    </p>`
                  : nothing
              }`
      }
      ${
        state.document.rig === 'practice'
          ? html`<p class="small soft">
              ${msg('In the practice room a simulated processor plays what is proposed.')}
              ${
                state.document.practice.slips.length > 0
                  ? msg('Something is mistyped in it on purpose.')
                  : nothing
              }
            </p>`
          : nothing
      }`;
  }
}

/** How much of the list is typed, and the way to it. */
function typed({ layout, document }: BenchState, proposal: Proposal) {
  const lines = settingsList(proposal, layout, document.sheet, document.typed);
  const all = lines.filter(({ text }) => text !== null);
  const ticked = all.filter((line) => line.ticked).length;
  return html`<p>
    ${msg(
      html`${all.length} settings stand in
        Propose${ticked > 0 ? msg(str`, ${ticked} of them ticked as typed`) : ''}.
        ${
          proposal.equaliser
            ? msg('The proposed equaliser is typed as well; dynamics and upmixing stay off.')
            : msg('Equaliser, dynamics and upmixing stay off.')
        } <a href="#propose/list">See the settings</a>`,
    )}
  </p>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-proof-start': ProofStart;
  }
}
