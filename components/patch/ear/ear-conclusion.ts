import { msg, str } from '@lit/localize';
import { LitElement, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench } from '../../../src/session/bench';
import type { ChannelLabel } from '../../../src/system/channel';
import { concludeEarCheck } from '../../../src/wirecheck/ear-check';
import { BenchController } from '../../bench-controller';
import { buttonStyles } from '../../controls/button-styles';
import { sharedStyles } from '../../theme/shared-styles';
import { patchCautions } from '../cautions';
import { findingStyles } from '../finding-styles';
import { sayFinding } from '../say-finding';
import { wiringOrder } from '../wiring/wiring-now';

/** What the answers come to and which plugs to move. Fires `ll-retest` with the channels to play. */
@customElement('ll-ear-conclusion')
export class EarConclusion extends LitElement {
  static override styles = [sharedStyles, buttonStyles, findingStyles];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ type: Boolean }) disabled = false;
  private readonly follow = new BenchController(this);

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    const order = wiringOrder(state);
    const { open, findings, proven, retest } = concludeEarCheck(order, state.document.earAnswers);
    if (open.length === order.length) return nothing;
    const [caution] = patchCautions(state.layout);
    return html`<h2>
        ${
          proven
            ? msg('Every channel sounds from its own speaker')
            : findings.length === 0
              ? msg(str`Nothing wrong so far, ${open.length} still to play`)
              : msg('What to change')
        }
      </h2>
      ${findings.map((finding) => sayFinding(finding, state))}
      ${findings.length === 0 ? nothing : html`<p class="soft small">${caution}</p>`}
      <div class="row">
        ${retest.length === 0 ? nothing : this.again(msg('Play only these again'), 'go', retest)}
        ${this.again(msg('Play all again'), 'ghost', order)}
      </div>
      ${
        retest.length === 0
          ? nothing
          : html`<p class="soft small">
              ${msg(str`These: ${retest.join(', ')}. The other answers stay.`)}
            </p>`
      }`;
  }

  private again(words: string, kind: 'go' | 'ghost', channels: readonly ChannelLabel[]) {
    return html`<button
      class=${kind}
      ?disabled=${this.disabled}
      @click=${() => this.dispatchEvent(new CustomEvent('ll-retest', { detail: channels }))}
    >
      ${words}
    </button>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-ear-conclusion': EarConclusion;
  }
  interface HTMLElementEventMap {
    'll-retest': CustomEvent<readonly ChannelLabel[]>;
  }
}
