import { msg } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench, BenchState } from '../../../src/session/bench';
import { BenchController } from '../../bench-controller';
import { buttonStyles } from '../../controls/button-styles';
import '../../controls/check-field';
import '../../controls/number-field';
import { sharedStyles } from '../../theme/shared-styles';
import { changeLive } from '../change-live';
import { climbWishes, type ClimbWishes } from './climb-wishes';

/** What a climb is to reach and never to pass, and the button that starts it. */
@customElement('ll-climb-form')
export class ClimbForm extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-3);
      }

      .fields {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 13rem), 1fr));
        gap: var(--space-3) var(--space-4);
      }

      .go {
        justify-self: start;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);

  private wish(change: Partial<ClimbWishes>): void {
    if (!this.bench) return;
    climbWishes.keep(this.bench, { ...climbWishes.of(this.bench), ...change });
    this.requestUpdate();
  }

  private climb({ document }: BenchState): void {
    if (!this.bench) return;
    const { marginDb, useTarget, targetDb } = climbWishes.of(this.bench);
    const calibrated = document.microphone.soundLevel !== null;
    void this.bench.climbLevel({
      marginDb,
      targetDb: calibrated && useTarget ? targetDb : null,
      capDb: document.live.capDb,
    });
  }

  override render() {
    const { state } = this.follow;
    if (!state || !this.bench) return nothing;
    const { marginDb, useTarget, targetDb } = climbWishes.of(this.bench);
    const busy = state.activity.kind !== 'idle';
    const calibrated = state.document.microphone.soundLevel !== null;
    return html`<div class="fields">
        <ll-number
          label=${msg('Margin over the noise')}
          unit="dB"
          min="10"
          max="60"
          .value=${marginDb}
          ?disabled=${busy}
          hint=${msg('25 is enough for roll-offs; 35 shows more of the decay.')}
          @ll-number=${(event: CustomEvent<number>) => this.wish({ marginDb: event.detail })}
        ></ll-number>
        <ll-number
          label=${msg('Never above')}
          unit="dB"
          min="-60"
          max="0"
          .value=${state.document.live.capDb}
          ?disabled=${busy}
          hint=${msg('0 is the loudest this computer can play.')}
          @ll-number=${(event: CustomEvent<number>) => this.cap(event.detail)}
        ></ll-number>
      </div>
      ${
        calibrated
          ? html`<ll-check
                label=${msg('Stop at a sound level too')}
                hint=${msg('The climb ends at whichever comes first.')}
                .checked=${useTarget}
                ?disabled=${busy}
                @ll-check=${(event: CustomEvent<boolean>) => this.wish({ useTarget: event.detail })}
              ></ll-check>
              ${
                useTarget
                  ? html`<ll-number
                      label=${msg('Sound level at the microphone')}
                      unit="dB(C)"
                      min="50"
                      max="100"
                      .value=${targetDb}
                      ?disabled=${busy}
                      @ll-number=${(event: CustomEvent<number>) =>
                        this.wish({ targetDb: event.detail })}
                    ></ll-number>`
                  : nothing
              }`
          : html`<p class="soft small">
              ${msg(html`A sound level can be aimed at once the microphone is <a href="#probe/microphone">calibrated</a>.`)}
            </p>`
      }
      <button class="go" ?disabled=${busy} @click=${() => this.climb(state)}>
        ${msg('Climb to a test level')}
      </button>
      <p class="soft small">
        ${msg('Begins quiet and goes up in small steps; ends by itself, at once when anything clips. Esc stops it.')}
      </p>`;
  }

  /** A cap under the level in hand takes the level down with it. */
  private cap(capDb: number): void {
    const gainDb = this.follow.state?.document.live.gainDb ?? capDb;
    changeLive(this.bench, msg('Set level cap'), { capDb, gainDb: Math.min(gainDb, capDb) });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-climb-form': ClimbForm;
  }
}
