import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Channel, ChannelLabel } from '../../../src/system/channel';
import type { EarAnswers } from '../../../src/wirecheck/ear-check';
import { buttonStyles } from '../../controls/button-styles';
import { asSentence } from '../../plan/layout-words';
import '../../plan/speaker-icon';
import { sharedStyles } from '../../theme/shared-styles';
import { speakerListStyles } from '../speaker-list-styles';
import { earMark } from './ear-words';

/**
 * The speakers in wiring order with what was heard of each. A press on one fires `ll-speaker`: it
 * is played, or, while pointing, it is where the sound came from.
 */
@customElement('ll-ear-list')
export class EarList extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    speakerListStyles,
    css`
      :host {
        container-type: inline-size;
      }

      button {
        grid-template-columns: 1.6rem 1.3rem 3.4rem minmax(0, 1fr);
      }

      .pointing button {
        border: 2px solid var(--signal);
      }

      .at button {
        font-weight: 700;
      }

      .said {
        grid-column: 3 / 5;
      }
    `,
  ];

  /** In wiring order. */
  @property({ attribute: false }) channels: readonly Channel[] = [];
  @property({ attribute: false }) answers: EarAnswers = {};
  @property({ attribute: false }) at: ChannelLabel | null = null;
  @property({ type: Boolean }) pointing = false;
  @property({ type: Boolean }) disabled = false;

  override render() {
    return html`<ol
      class=${this.pointing ? 'pointing' : ''}
      aria-label=${msg('Speakers in wiring order')}
    >
      ${this.channels.map((channel, index) => this.row(channel, index + 1))}
    </ol>`;
  }

  private row(channel: Channel, number: number) {
    const { label, name } = channel;
    const mark = earMark(label, this.answers);
    return html`<li class=${label === this.at ? 'at' : ''}>
      <button
        ?disabled=${this.disabled}
        aria-current=${label === this.at ? 'step' : nothing}
        title=${this.pointing ? msg(str`The sound came from ${label}`) : msg(str`Play ${label}`)}
        @click=${() =>
          this.dispatchEvent(new CustomEvent('ll-speaker', { detail: label, bubbles: true }))}
      >
        <span class="num">${number}</span>
        <ll-speaker-icon .channel=${channel}></ll-speaker-icon>
        <span class="label">${label}</span>
        <span>${asSentence(name)}</span>
        ${
          mark === null
            ? nothing
            : html`<span class="said ${mark.right ? 'ok' : 'signal'}"
                >${mark.right ? '✓' : '✗'} ${mark.words}</span
              >`
        }
      </button>
    </li>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-ear-list': EarList;
  }
  interface HTMLElementEventMap {
    'll-speaker': CustomEvent<ChannelLabel>;
  }
}
