import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench } from '../../src/session/bench';
import { BenchController } from '../bench-controller';
import { numberText, thinSpace } from '../charts/number-text';
import { buttonStyles } from '../controls/button-styles';
import '../controls/number-field';
import { sharedStyles } from '../theme/shared-styles';

const quietestDb = -60;
const loudestDb = 0;
const stepDb = 6;
const cautionAboveDb = -18;

/** How loud the take plays: starts quiet, moves in small steps, never above full scale. */
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
    const gainDb = Math.min(loudestDb, Math.max(quietestDb, db));
    this.bench?.change('Set test level', (document) => ({
      ...document,
      live: { ...document.live, gainDb },
    }));
  }

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    const { gainDb } = state.document.live;
    const busy = state.activity.kind !== 'idle';
    const caution =
      gainDb > cautionAboveDb
        ? `Above ${numberText(cautionAboveDb)}${thinSpace}dB: leave the room or wear hearing protection.`
        : nothing;
    return html`<ll-number
        label="Test level"
        unit="dB"
        min=${quietestDb}
        max=${loudestDb}
        .value=${gainDb}
        ?disabled=${busy}
        hint="0 is the loudest a take can be. Start at −30 and go up until the sweeps stand clear of the noise."
        @ll-number=${(event: CustomEvent<number>) => this.set(event.detail)}
      ></ll-number>
      <div>
        <button
          class="ghost"
          ?disabled=${busy || gainDb <= quietestDb}
          @click=${() => this.set(gainDb - stepDb)}
        >
          ${stepDb}${thinSpace}dB quieter
        </button>
        <button
          class="ghost"
          ?disabled=${busy || gainDb >= loudestDb}
          @click=${() => this.set(gainDb + stepDb)}
        >
          ${stepDb}${thinSpace}dB louder
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
