import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Channel, ChannelLabel } from '../../../src/system/channel';
import type { EarAnswers } from '../../../src/wirecheck/ear-check';
import { buttonStyles } from '../../controls/button-styles';
import { asSentence } from '../../plan/layout-words';
import '../../plan/speaker-icon';
import { sharedStyles } from '../../theme/shared-styles';
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
    css`
      :host {
        display: block;
        container-type: inline-size;
      }

      ol {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 15rem), 1fr));
        gap: var(--space-1) var(--space-3);
        margin: 0;
        padding: 0;
        list-style: none;
      }

      button {
        display: grid;
        grid-template-columns: 1.6rem 1.3rem 3.4rem minmax(0, 1fr);
        gap: 0 var(--space-2);
        align-items: center;
        width: 100%;
        min-height: 2.75rem;
        padding: var(--space-1) var(--space-2);
        border: var(--line) solid var(--rule);
        border-radius: var(--radius);
        background: none;
        text-align: left;
      }

      button:hover:not(:disabled) {
        border-color: var(--ink);
      }

      .pointing button {
        border: 2px solid var(--signal);
      }

      .at button {
        background: var(--wash);
        font-weight: 700;
      }

      .label {
        font-weight: 700;
      }

      .said {
        grid-column: 3 / 5;
        font-size: var(--text-small);
      }

      .ok {
        color: var(--ok);
      }

      button:disabled .signal,
      button:disabled .ok {
        color: inherit;
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
    return html`<ol class=${this.pointing ? 'pointing' : ''} aria-label="Speakers in wiring order">
      ${this.channels.map((channel, index) => this.row(channel, index + 1))}
    </ol>`;
  }

  private row(channel: Channel, number: number) {
    const { label, name } = channel;
    const mark = earMark(label, this.answers);
    return html`<li class=${label === this.at ? 'at' : ''}>
      <button
        ?disabled=${this.disabled}
        title=${this.pointing ? `The sound came from ${label}` : `Play ${label}`}
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
