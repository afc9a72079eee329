import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Channel, ChannelLabel } from '../../../src/system/channel';
import type { WalkResult, WalkStop } from '../../../src/wirecheck/walk';
import { buttonStyles } from '../../controls/button-styles';
import { asSentence } from '../../plan/layout-words';
import '../../plan/speaker-icon';
import { sharedStyles } from '../../theme/shared-styles';
import { speakerListStyles } from '../speaker-list-styles';
import { walkMark } from './walk-words';

/** The stops of the walk in their order; a press on one fires `ll-speaker`. */
@customElement('ll-walk-list')
export class WalkList extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    speakerListStyles,
    css`
      button {
        grid-template-columns: 1.3rem 3.6rem minmax(0, 1fr);
      }

      .at button {
        border: 2px solid var(--ink);
      }

      .said {
        grid-column: 2 / 4;
      }
    `,
  ];

  @property({ attribute: false }) channels: readonly Channel[] = [];
  @property({ attribute: false }) walk: readonly WalkStop[] = [];
  @property({ attribute: false }) result: WalkResult | null = null;
  @property({ attribute: false }) at: ChannelLabel | null = null;
  @property({ type: Boolean }) disabled = false;

  override render() {
    return html`<ol aria-label=${msg('Speakers in the order of the walk')}>
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
        title=${visited ? msg(str`Take the stop at ${label} again`) : msg(str`Go to ${label} next`)}
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
                >${mark === null ? msg('visited') : `${mark.right ? '✓' : '✗'} ${mark.words}`}</span
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
