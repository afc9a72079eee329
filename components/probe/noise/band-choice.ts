import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { noiseBands, noiseLimits } from '../../../src/noise/noise-bands';
import { hzText } from '../../../src/locale/number-text';
import '../../controls/choice';
import '../../controls/number-field';
import { sharedStyles } from '../../theme/shared-styles';
import { presetOf } from './named-bands';

const options = () => [
  ...noiseBands.map(({ id, name, lowHz, highHz }) => ({
    value: id,
    label: name,
    hint: msg(str`${hzText(lowHz)} to ${hzText(highHz)}`),
  })),
  { value: 'free', label: msg('Free'), hint: msg('limits typed') },
];

/** Limits of a band, Hz. */
interface BandLimits {
  readonly lowHz: number;
  readonly highHz: number;
}

/** What a line of 44.1 kHz carries safely. */
const highestHz = 20_000;

/** The least ratio of the two limits: a third of an octave. */
const leastRatio = 2 ** (1 / 3);

/** The band of the noise: one of the trade's, or limits of one's own. Fires `ll-band`. */
@customElement('ll-band-choice')
export class BandChoice extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-3);
      }

      .limits {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 8.5rem), 1fr));
        gap: var(--space-3);
      }
    `,
  ];

  @property({ type: Number }) lowHz = 20;
  @property({ type: Number }) highHz = 20_000;
  @property({ type: Boolean }) disabled = false;
  @state() private free = false;

  private hand(band: BandLimits): void {
    this.dispatchEvent(new CustomEvent('ll-band', { detail: band, bubbles: true, composed: true }));
  }

  override render() {
    const preset = presetOf(this.lowHz, this.highHz);
    const free = this.free || preset === null;
    return html`<ll-choice
        label=${msg('Band')}
        .options=${options()}
        .value=${free ? 'free' : preset}
        ?disabled=${this.disabled}
        @ll-pick=${(event: CustomEvent<string>) => {
          const picked = noiseBands.find(({ id }) => id === event.detail);
          this.free = picked === undefined;
          if (picked) this.hand({ lowHz: picked.lowHz, highHz: picked.highHz });
        }}
      ></ll-choice>
      ${free ? this.limits() : nothing}`;
  }

  private limits() {
    const { lowHz, highHz } = this;
    return html`<div class="limits">
      <ll-number
        label=${msg('From')}
        unit="Hz"
        min=${noiseLimits.lowHz}
        max=${Math.floor(highHz / leastRatio)}
        .value=${lowHz}
        ?disabled=${this.disabled}
        @ll-number=${(event: CustomEvent<number>) => this.hand({ lowHz: event.detail, highHz })}
      ></ll-number>
      <ll-number
        label=${msg('To')}
        unit="Hz"
        min=${Math.ceil(lowHz * leastRatio)}
        max=${highestHz}
        .value=${highHz}
        ?disabled=${this.disabled}
        @ll-number=${(event: CustomEvent<number>) => this.hand({ lowHz, highHz: event.detail })}
      ></ll-number>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-band-choice': BandChoice;
  }
  interface HTMLElementEventMap {
    'll-band': CustomEvent<BandLimits>;
  }
}
