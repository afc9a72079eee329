import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type {
  LedgerLineProposal,
  LedgerMend,
  LedgerProposal,
} from '../../../src/proposal/ledger-proposal';
import type { Reason } from '../../../src/proposal/reason';
import type { Readings } from '../../../src/reading/reading';
import type { Layout } from '../../../src/system/channel';
import { buttonStyles } from '../../controls/button-styles';
import { sharedStyles } from '../../theme/shared-styles';
import '../reasons/reason-list';
import { ledgerFinding, mendText, remainderText, wantsMending } from './ledger-words';

type Change = LedgerMend['change'];

/** What the ledger lacks, why, and the changes that bring it back. Fires `ll-mend` with the change. */
@customElement('ll-ledger-mends')
export class LedgerMends extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-3);
        align-content: start;
        min-width: 0;
      }

      .buttons {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-2);
      }

      .gap {
        display: grid;
        gap: var(--space-2);
      }
    `,
  ];

  @property({ attribute: false }) ledger: LedgerProposal | null = null;
  @property({ attribute: false }) layout: Layout | null = null;
  @property({ attribute: false }) readings: Readings | null = null;
  /** Over the losses; what the ledger found when left empty. */
  @property() heading = '';
  /** So many losses at most are explained; the rest are counted. */
  @property({ type: Number }) most = 3;

  override render() {
    const { ledger, layout } = this;
    if (!ledger || !layout) return nothing;
    const losing = ledger.lines.filter(wantsMending).sort((a, b) => b.lossDb - a.lossDb);
    const told = onePerChange(losing);
    const rest = told.length - this.most;
    return html`<h2>${this.heading || ledgerFinding(ledger)}</h2>
      ${losing.length === 0 ? html`<p>${allThere(ledger)}</p>` : nothing}
      ${told.slice(0, this.most).map((line) => this.gap(line, layout))}
      ${rest > 0 ? html`<p class="soft">${msg(str`${rest} more under Bass.`)}</p>` : nothing}
      <p class="soft">${remainderText(ledger)}</p>`;
  }

  private gap({ why, mends }: LedgerLineProposal, layout: Layout) {
    const reasons: Reason[] = why ? [why] : [];
    return html`<div class="gap">
      <ll-reasons .reasons=${reasons} .readings=${this.readings}></ll-reasons>
      <div class="buttons">
        ${mends.map(
          (mend) =>
            html`<button
              class="ghost"
              title=${mend.sentence}
              @click=${() => this.mend(mend.change)}
            >
              ${mendText(mend, layout)}
            </button>`,
        )}
      </div>
    </div>`;
  }

  private mend(detail: Change): void {
    this.dispatchEvent(new CustomEvent('ll-mend', { detail, bubbles: true, composed: true }));
  }
}

/** Channels that the same change would mend are told once, by the one that loses most. */
function onePerChange(lines: readonly LedgerLineProposal[]): LedgerLineProposal[] {
  const seen = new Set<string>();
  return lines.filter(({ mends }) => {
    const key = mends.map(({ change }) => JSON.stringify(change)).join();
    if (key !== '' && seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

function allThere({ lines }: LedgerProposal): string {
  return lines.length === 0
    ? msg('A roll-off of the subs is missing: the notes under Probe say why.')
    : msg('Every channel reaches somebody at every frequency that something in the room can play.');
}

declare global {
  interface HTMLElementTagNameMap {
    'll-ledger-mends': LedgerMends;
  }
  interface HTMLElementEventMap {
    'll-mend': CustomEvent<Change>;
  }
}
