import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench } from '../../../src/session/bench';
import { BenchController } from '../../bench-controller';
import { numberText, thinSpace } from '../../../src/locale/number-text';
import { buttonStyles } from '../../controls/button-styles';
import '../../controls/number-field';
import { sharedStyles } from '../../theme/shared-styles';
import { changeLive } from '../change-live';

const quietestDb = -60;
const stepDb = 6;
const cautionAboveDb = -18;

/** How loud takes and noise play: starts quiet, moves in small steps, never above the cap. */
@customElement('ll-test-level')
export class TestLevel extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-2);
      }

      [role='status']:empty {
        position: absolute;
      }

      div {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-2);
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);

  private set(db: number): void {
    const capDb = this.follow.state?.document.live.capDb ?? quietestDb;
    changeLive(this.bench, msg('Set test level'), {
      gainDb: Math.min(capDb, Math.max(quietestDb, db)),
    });
  }

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    const { gainDb, capDb } = state.document.live;
    const busy = state.activity.kind !== 'idle';
    const caution =
      gainDb > cautionAboveDb
        ? msg(
            str`Above ${numberText(cautionAboveDb)}${thinSpace}dB: leave the room or wear hearing protection.`,
          )
        : nothing;
    return html`<ll-number
        label=${msg('Test level')}
        unit="dB"
        min=${quietestDb}
        max=${capDb}
        .value=${gainDb}
        ?disabled=${busy}
        hint=${msg(str`Start at −30 and go up until the sweeps stand clear of the noise. The cap is ${numberText(capDb)}${thinSpace}dB.`)}
        @ll-number=${(event: CustomEvent<number>) => this.set(event.detail)}
      ></ll-number>
      <div>
        <button
          class="ghost"
          ?disabled=${busy || gainDb <= quietestDb}
          @click=${() => this.set(gainDb - stepDb)}
        >
          ${msg(str`${stepDb}${thinSpace}dB quieter`)}
        </button>
        <button
          class="ghost"
          ?disabled=${busy || gainDb >= capDb}
          @click=${() => this.set(gainDb + stepDb)}
        >
          ${msg(str`${stepDb}${thinSpace}dB louder`)}
        </button>
      </div>
      <p class="signal" role="status">${caution}</p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-test-level': TestLevel;
  }
}
