import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { hzText } from '../../charts/number-text';
import '../../controls/choice';
import '../../controls/number-field';
import { sharedStyles } from '../../theme/shared-styles';
import { presetOf, presets, type NoiseBand, type PresetId } from './band-presets';

const names: Readonly<Record<PresetId, string>> = { full: 'Full', mains: 'Mains', sub: 'Sub' };
const ids: readonly PresetId[] = ['full', 'mains', 'sub'];
const options = [
  ...ids.map((id) => ({
    value: id,
    label: names[id],
    hint: `${hzText(presets[id].lowHz)} to ${hzText(presets[id].highHz)}`,
  })),
  { value: 'free', label: 'Free', hint: 'limits typed' },
];

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

  @property({ type: Number }) lowHz = presets.full.lowHz;
  @property({ type: Number }) highHz = presets.full.highHz;
  @property({ type: Boolean }) disabled = false;
  @state() private free = false;

  private hand(band: NoiseBand): void {
    this.dispatchEvent(new CustomEvent('ll-band', { detail: band, bubbles: true, composed: true }));
  }

  override render() {
    const preset = presetOf(this.lowHz, this.highHz);
    const free = this.free || preset === null;
    return html`<ll-choice
        label="Band"
        .options=${options}
        .value=${free ? 'free' : preset}
        ?disabled=${this.disabled}
        @ll-pick=${(event: CustomEvent<string>) => {
          const picked = ids.find((id) => id === event.detail);
          this.free = picked === undefined;
          if (picked) this.hand(presets[picked]);
        }}
      ></ll-choice>
      ${free ? this.limits() : nothing}`;
  }

  private limits() {
    const { lowHz, highHz } = this;
    return html`<div class="limits">
      <ll-number
        label="From"
        unit="Hz"
        min="10"
        max=${Math.floor(highHz / leastRatio)}
        .value=${lowHz}
        ?disabled=${this.disabled}
        @ll-number=${(event: CustomEvent<number>) => this.hand({ lowHz: event.detail, highHz })}
      ></ll-number>
      <ll-number
        label="To"
        unit="Hz"
        min=${Math.ceil(lowHz * leastRatio)}
        max="20000"
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
    'll-band': CustomEvent<NoiseBand>;
  }
}
