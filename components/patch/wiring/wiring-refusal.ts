import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench } from '../../../src/session/bench';
import type { NotWired } from '../../../src/system/wiring/wiring';
import { BenchController } from '../../bench-controller';
import { buttonStyles } from '../../controls/button-styles';
import { asSentence } from '../../plan/layout-words';
import '../../plan/speaker-icon';
import { sharedStyles } from '../../theme/shared-styles';
import { findingStyles } from '../finding-styles';

/** Why a layout cannot be wired, rule by rule, and the nearest layouts that can, as buttons. */
@customElement('ll-wiring-refusal')
export class WiringRefusal extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    findingStyles,
    css`
      .speakers {
        display: flex;
        flex-wrap: wrap;
        gap: 0 var(--space-3);
        font-weight: 700;
      }

      .speakers span {
        display: inline-flex;
        align-items: center;
        gap: 0.35rem;
      }

      ul {
        display: grid;
        gap: var(--space-2);
        padding: 0;
        list-style: none;
      }

      li {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-1) var(--space-3);
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) refusal: NotWired | null = null;
  private readonly follow = new BenchController(this);

  override render() {
    const { state } = this.follow;
    const { refusal } = this;
    if (!state || !refusal) return nothing;
    const { layout } = state;
    const busy = state.activity.kind !== 'idle';
    return html`${refusal.conflicts.map(
      ({ sentence, rules, channels }) =>
        html`<div class="finding why">
          <p class="speakers">
            ${layout.channels
              .filter(({ label }) => channels.includes(label))
              .map(
                (channel) =>
                  html`<span
                    ><ll-speaker-icon .channel=${channel}></ll-speaker-icon>${channel.label}</span
                  >`,
              )}
          </p>
          <p>${sentence}</p>
          <p class="soft small">
            ${msg(str`${rules.length === 1 ? msg('Rule') : msg('Rules')} of the processor: ${rules.join(', ')}.`)}
          </p>
        </div>`,
    )}
    ${
      refusal.nearest.length === 0
        ? html`<p>
            ${msg('No other layout can be wired to it either: look at the processor sheet.')}
          </p>`
        : html`<h2>${msg('Nearest layouts that can be wired')}</h2>
            <ul>
              ${refusal.nearest.map(
                ({ name, changes }) =>
                  html`<li>
                    <button
                      class="ghost"
                      ?disabled=${busy}
                      @click=${() => this.bench?.setLayout(name)}
                    >
                      ${msg(str`Declare ${name} instead`)}
                    </button>
                    <span>${asSentence(changes.join(', '))}</span>
                  </li>`,
              )}
            </ul>
            <p class="soft small">
              ${msg('Declare only what stands in the room and can be wired: a speaker the processor believes in but cannot feed loses its sound to nobody.')}
            </p>`
    }`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-wiring-refusal': WiringRefusal;
  }
}
