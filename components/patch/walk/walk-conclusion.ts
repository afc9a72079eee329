import { msg, str } from '@lit/localize';
import { LitElement, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench } from '../../../src/session/bench';
import { withoutStops } from '../../../src/session/walk-record';
import type { WiringFinding } from '../../../src/wirecheck/wiring-finding';
import { BenchController } from '../../bench-controller';
import { buttonStyles } from '../../controls/button-styles';
import { sharedStyles } from '../../theme/shared-styles';
import { patchCautions } from '../cautions';
import { findingStyles } from '../finding-styles';
import { sayFinding } from '../say-finding';
import { toWalkAgain, walkResult } from './walk-words';

/** What the walk comes to, which plugs to move, and which stops to make again after that. */
@customElement('ll-walk-conclusion')
export class WalkConclusion extends LitElement {
  static override styles = [sharedStyles, buttonStyles, findingStyles];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ type: Boolean }) disabled = false;
  private readonly follow = new BenchController(this);

  override render() {
    const { state } = this.follow;
    if (!state || state.document.walk.length === 0) return nothing;
    const { walk, system } = state.document;
    const { findings } = walkResult(walk, state.layout, system);
    const left = state.layout.channels.filter(
      ({ label }) => !walk.some(({ speaker }) => speaker === label),
    );
    const again = toWalkAgain(findings).filter((label) =>
      walk.some(({ speaker }) => speaker === label),
    );
    const [caution] = patchCautions(state.layout);
    return html`<h2>${titleOf(findings, left.length)}</h2>
      ${findings.map((finding) => sayFinding(finding, state))}
      ${findings.length === 0 ? nothing : html`<p class="soft small">${caution}</p>`}
      <div class="row">
        ${
          again.length === 0
            ? nothing
            : html`<button
                class="go"
                ?disabled=${this.disabled}
                @click=${() => this.forget(msg('Walk to some again'), again)}
              >
                ${msg('Walk to these again')}
              </button>`
        }
        <button
          class="ghost"
          ?disabled=${this.disabled}
          @click=${() =>
            this.forget(
              msg('Walk anew'),
              walk.map(({ speaker }) => speaker),
            )}
        >
          ${msg('Begin the walk anew')}
        </button>
      </div>
      ${
        again.length === 0
          ? nothing
          : html`<p class="soft small">
              ${msg(str`Once it is put right: ${again.join(', ')}. The other stops stay.`)}
            </p>`
      }`;
  }

  private forget(name: string, speakers: Parameters<typeof withoutStops>[1]): void {
    this.bench?.change(name, (document) => withoutStops(document, speakers));
  }
}

function titleOf(findings: readonly WiringFinding[], left: number): string {
  if (findings.length > 0)
    return left > 0 ? msg(str`So far, ${left} stops to go`) : msg('What to change');
  return left > 0
    ? msg(str`Nothing wrong so far, ${left} ${left === 1 ? msg('stop') : msg('stops')} to go`)
    : msg('Every channel sounds from its own speaker');
}

declare global {
  interface HTMLElementTagNameMap {
    'll-walk-conclusion': WalkConclusion;
  }
}
