import { msg, str } from '@lit/localize';
import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { LaterElement } from '../../later-element';
import { mostInverted } from '../../../src/proposal/most-inverted';
import type { ChannelReading } from '../../../src/reading/reading';
import type { ChannelLabel } from '../../../src/system/channel';
import { askToSelect } from '../../events';
import { buttonStyles } from '../../controls/button-styles';
import { sharedStyles } from '../../theme/shared-styles';

/** What went wrong or cannot be told, speaker by speaker, each as a sentence. */
@customElement('ll-take-notes')
export class TakeNotes extends LaterElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      :host {
        display: block;
      }

      dl {
        display: grid;
        grid-template-columns: max-content minmax(0, 1fr);
        gap: var(--space-2) var(--space-4);
      }

      dd {
        display: grid;
        gap: var(--space-1);
      }

      dt button {
        min-height: 1.75rem;
        font-weight: 700;
      }

      dd p {
        align-self: center;
        padding-block: 0.15rem;
      }
    `,
  ];

  @property({ attribute: false }) channels: readonly ChannelReading[] = [];
  @property({ attribute: false }) selected: ChannelLabel | null = null;

  override render() {
    const noted = this.channels
      .filter(
        ({ faults, notes, polarity }) =>
          faults.length + notes.length > 0 || polarity === 'inverted',
      )
      .sort((a, b) => weight(b) - weight(a));
    if (noted.length === 0) return nothing;
    const likeMost = mostInverted(this.channels);
    return html`<dl>
      ${noted.map(
        ({ channel, faults, notes, polarity }) =>
          html`<dt>
              <button
                class="plain num"
                aria-label=${msg(str`Select ${channel}`)}
                aria-pressed=${channel === this.selected ? 'true' : 'false'}
                @click=${() => askToSelect(this, channel)}
              >
                ${channel}
              </button>
            </dt>
            <dd>
              ${faults.map(({ sentence }) => html`<p class="signal">${sentence}</p>`)}
              ${
                polarity === 'inverted'
                  ? html`<p class="signal">
                      ${
                        likeMost
                          ? msg(
                              'Reads inverted, as most do: the microphone or its input may turn the polarity over. Swap no wires before that is settled.',
                            )
                          : msg(
                              'Plays inverted. Switch the amplifier off, then swap plus and minus at one end of its cable.',
                            )
                      }
                    </p>`
                  : nothing
              }
              ${notes.map((note) => html`<p>${note}</p>`)}
            </dd>`,
      )}
    </dl>`;
  }
}

function weight({ faults, polarity }: ChannelReading): number {
  return faults.length > 0 ? 2 : polarity === 'inverted' ? 1 : 0;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-take-notes': TakeNotes;
  }
}
