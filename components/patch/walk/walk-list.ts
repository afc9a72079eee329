import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Channel, ChannelLabel } from '../../../src/system/channel';
import type { WalkResult, WalkStop } from '../../../src/wirecheck/walk';
import { asSentence } from '../../plan/layout-words';
import '../../plan/speaker-icon';
import { sharedStyles } from '../../theme/shared-styles';
import { walkMark } from './walk-words';

/** The stops of the walk in their order; a press on one fires `ll-speaker`. */
@customElement('ll-walk-list')
export class WalkList extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
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
        grid-template-columns: 1.3rem 3.6rem minmax(0, 1fr);
        gap: 0 var(--space-2);
        align-items: center;
        width: 100%;
        min-height: 2.75rem;
        padding: var(--space-1) var(--space-2);
        border: var(--line) solid var(--rule);
        border-radius: var(--radius);
        background: none;
        color: inherit;
        font: inherit;
        text-align: left;
        cursor: pointer;
      }

      button:hover:not(:disabled) {
        border-color: var(--ink);
      }

      button:disabled {
        cursor: not-allowed;
      }

      .at button {
        border: 2px solid var(--ink);
        background: var(--wash);
      }

      .label {
        font-weight: 700;
      }

      .said {
        grid-column: 2 / 4;
        font-size: var(--text-small);
      }

      .ok {
        color: var(--ok);
      }
    `,
  ];

  @property({ attribute: false }) channels: readonly Channel[] = [];
  @property({ attribute: false }) walk: readonly WalkStop[] = [];
  @property({ attribute: false }) result: WalkResult | null = null;
  @property({ attribute: false }) at: ChannelLabel | null = null;
  @property({ type: Boolean }) disabled = false;

  override render() {
    return html`<ol aria-label="Speakers in the order of the walk">
      ${this.channels.map((channel) => this.row(channel))}
    </ol>`;
  }

  private row(channel: Channel) {
    const { label, name } = channel;
    const visited = this.walk.some(({ speaker }) => speaker === label);
    const mark = visited && this.result ? walkMark(label, this.result) : null;
    return html`<li class=${label === this.at ? 'at' : ''}>
      <button
        ?disabled=${this.disabled}
        title=${visited ? `Take the stop at ${label} again` : `Go to ${label} next`}
        aria-current=${label === this.at ? 'step' : nothing}
        @click=${() =>
          this.dispatchEvent(new CustomEvent('ll-speaker', { detail: label, bubbles: true }))}
      >
        <ll-speaker-icon .channel=${channel}></ll-speaker-icon>
        <span class="label">${label}</span>
        <span>${asSentence(name)}</span>
        ${
          visited
            ? html`<span class="said ${mark?.right ? 'ok' : mark ? 'signal' : 'soft'}"
                >${mark === null ? 'visited' : `${mark.right ? '✓' : '✗'} ${mark.words}`}</span
              >`
            : nothing
        }
      </button>
    </li>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-walk-list': WalkList;
  }
}
