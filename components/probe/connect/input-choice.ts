import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench } from '../../../src/session/bench';
import { referenceChannel } from '../../../src/system/layout';
import { BenchController } from '../../bench-controller';
import '../../controls/check-field';
import '../../controls/choice';
import { sharedStyles } from '../../theme/shared-styles';
import { changeLive } from '../change-live';

const sides = [
  {
    value: 'found',
    get label() {
      return msg('Found from the sound');
    },
  },
  {
    value: '0',
    get label() {
      return msg('Input 1');
    },
  },
  {
    value: '1',
    get label() {
      return msg('Input 2');
    },
  },
] as const;

/** Which input of a two-channel interface the microphone sits on, and what the other carries. */
@customElement('ll-input-choice')
export class InputChoice extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-3);
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    const busy = state.activity.kind !== 'idle';
    const { microphoneInput, loopback } = state.document.live;
    const reference = referenceChannel(state.layout);
    return html`<ll-choice
        label=${msg('Input with the microphone')}
        .options=${sides}
        .value=${microphoneInput === null ? 'found' : String(microphoneInput)}
        ?disabled=${busy}
        @ll-pick=${(event: CustomEvent<string>) =>
          changeLive(this.bench, msg('Choose microphone input'), {
            microphoneInput: event.detail === '0' ? 0 : event.detail === '1' ? 1 : null,
          })}
      ></ll-choice>
      <ll-check
        label=${msg('The other input carries a loopback')}
        .checked=${loopback}
        ?disabled=${busy}
        .hint=${msg(str`A cable from the output that plays ${reference} back into the other input: times then count from the electrical signal itself, so arrivals are absolute and the take needs no marks.`)}
        @ll-check=${(event: CustomEvent<boolean>) =>
          changeLive(this.bench, msg('Choose loopback'), { loopback: event.detail })}
      ></ll-check>
      ${
        loopback && microphoneInput === null
          ? html`<p class="signal">
              ${msg('Say which input the microphone sits on, so that the loopback is not taken for it.')}
            </p>`
          : nothing
      }`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-input-choice': InputChoice;
  }
}
