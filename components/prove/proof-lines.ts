import { distanceUnitOf } from '../../src/session/distance-unit';
import { msg } from '@lit/localize';
import { stateWord } from '../../src/locale/state-words';
import { LitElement, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { ProofLine, SettingChange, Verdict } from '../../src/proof/proof';
import type { Bench, BenchState } from '../../src/session/bench';
import { BenchController } from '../bench-controller';
import { buttonStyles } from '../controls/button-styles';
import { askToSelect } from '../events';
import { sharedStyles } from '../theme/shared-styles';
import { claimWord } from './claim-word';
import { addressOf, channelOf, sayChange } from './change-words';
import { figureText } from './figure-text';
import { proofLinesStyles } from './proof-lines-styles';

const marks: Readonly<Record<Verdict, string>> = { pass: '✓', fail: '✗', 'cannot tell': '?' };

/** A line per claim: the failed first, then those that cannot be told; what holds is folded. */
@customElement('ll-proof-lines')
export class ProofLines extends LitElement {
  static override styles = [sharedStyles, buttonStyles, proofLinesStyles];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);

  override render() {
    const { state } = this.follow;
    const proof = state?.proof;
    if (!state || !proof) return nothing;
    const of = (verdict: Verdict) => proof.lines.filter((line) => line.verdict === verdict);
    const [open, held] = [[...of('fail'), ...of('cannot tell')], of('pass')];
    return html`${
      open.length === 0
        ? nothing
        : html`<ul aria-label=${msg('What does not hold')}>
            ${open.map((line) => this.line(line, state))}
          </ul>`
    }
    ${
      held.length === 0
        ? nothing
        : html`<details ?open=${open.length === 0}>
            <summary>
              ${held.length} ${held.length === 1 ? msg('line holds') : msg('lines hold')}
            </summary>
            <ul aria-label=${msg('What holds')}>
              ${held.map((line) => this.line(line, state))}
            </ul>
          </details>`
    }`;
  }

  private line(line: ProofLine, state: BenchState) {
    const { id, verdict, sentence, changes, action, channels } = line;
    const judgedBy = figureText(line);
    return html`<li class=${verdict === 'cannot tell' ? 'untold' : verdict} data-line=${id}>
      <span class="mark" aria-hidden="true">${marks[verdict]}</span>
      <div>
        <p><span class="unseen">${stateWord(verdict)}: </span>${sentence}</p>
        ${judgedBy === null ? nothing : html`<p class="small">${judgedBy}</p>`}
        ${changes.map((change) => this.change(change, state))}
        ${action === null ? nothing : html`<p class="small">${action}</p>`}
        ${
          verdict === 'pass' || channels.length === 0 || state.document.rig === 'recording'
            ? nothing
            : html`<button
                class="plain"
                ?disabled=${state.activity.kind !== 'idle'}
                @click=${() => void this.bench?.startProof(channels)}
              >
                ${msg(html`Prove this again<span class="unseen">: ${claimWord(line.claim)}, ${channels.join(', ')}</span>`)}
              </button>`
        }
      </div>
    </li>`;
  }

  private change(change: SettingChange, { layout, document }: BenchState) {
    const channel = channelOf(change, layout);
    const unit = distanceUnitOf(document);
    return html`<p class="change">
      ${sayChange(change, layout, unit)}
      <a
        href=${addressOf(change, layout)}
        @click=${() => {
          if (channel !== null) askToSelect(this, channel);
        }}
        >${msg('Show this setting')}</a
      >
    </p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-proof-lines': ProofLines;
  }
}
