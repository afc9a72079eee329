import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { NoiseRequest } from '../../../src/noise/noise-state';
import type { Bench, BenchState } from '../../../src/session/bench';
import type { ChannelLabel } from '../../../src/system/channel';
import { BenchController } from '../../bench-controller';
import '../../controls/choice';
import '../../controls/number-field';
import { askToSelect } from '../../events';
import { selectStyles } from '../../controls/select-styles';
import '../../plan/speaker-icon';
import { sharedStyles } from '../../theme/shared-styles';
import './band-choice';
import { forChannel, noiseWishes, requestOf, type NoiseWishes } from './noise-wishes';

const kinds = [
  {
    value: 'noise',
    get label() {
      return msg('Pink noise');
    },
  },
  {
    value: 'listening',
    get label() {
      return msg('Listening');
    },
  },
] as const;

const resolutions = [1, 3, 6, 12, 24] as const;

/**
 * What sounds, on which speaker, in which band; changes are followed while it sounds. Fires
 * `ll-wish` after each.
 */
@customElement('ll-noise-controls')
export class NoiseControls extends LitElement {
  static override styles = [
    sharedStyles,
    selectStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-4);
      }

      .fields {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 8.5rem), 1fr));
        gap: var(--space-3);
        align-items: start;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  /** Only to be drawn again when another speaker was picked on the plan. */
  @property({ attribute: false }) selected: ChannelLabel | null = null;
  private readonly follow = new BenchController(this);

  /** Remembers a wish; what sounds already is changed at once. */
  private wish(wishes: NoiseWishes): void {
    const { state } = this.follow;
    if (!this.bench || !state) return;
    noiseWishes.keep(this.bench, wishes);
    if (state.activity.kind === 'noise') this.bench.changeNoise(requestOf(wishes, state));
    this.requestUpdate();
    this.dispatchEvent(new CustomEvent('ll-wish'));
  }

  override render() {
    const { state } = this.follow;
    if (!state || !this.bench) return nothing;
    const running = state.activity.kind === 'noise' ? state.activity.noise.request : null;
    const wishes = running ?? noiseWishes.of(this.bench);
    const request = running ?? requestOf(wishes, state);
    const busy = state.activity.kind !== 'idle' && running === null;
    const listening = request.kind === 'listening';
    return html`<ll-choice
        label=${msg('Mode')}
        .options=${kinds}
        .value=${request.kind}
        ?disabled=${busy || running !== null}
        @ll-pick=${(event: CustomEvent<string>) =>
          this.wish({ ...wishes, kind: event.detail === 'listening' ? 'listening' : 'noise' })}
      ></ll-choice>
      ${
        listening
          ? html`<p class="small">
              ${msg('The processor’s own noise generator plays, one speaker after another; this computer only listens. It gives level and response shape, without arrival.')}
            </p>`
          : nothing
      }
      <ll-choice
        label=${listening ? msg('Speaker the processor plays') : msg('Speaker')}
        .options=${state.layout.channels.map((channel) => ({
          value: channel.label,
          label: channel.label,
          mark: html`<ll-speaker-icon .channel=${channel}></ll-speaker-icon>`,
        }))}
        .value=${request.channel}
        ?disabled=${busy}
        @ll-pick=${(event: CustomEvent<string>) => {
          const picked = state.layout.channels.find(({ label }) => label === event.detail);
          if (!picked) return;
          this.wish(forChannel(wishes, picked.label, state));
          askToSelect(this, picked.label);
        }}
      ></ll-choice>
      <ll-band-choice
        .lowHz=${request.lowHz}
        .highHz=${request.highHz}
        ?disabled=${busy}
        @ll-band=${(event: CustomEvent<{ lowHz: number; highHz: number }>) =>
          this.wish({ ...wishes, ...event.detail })}
      ></ll-band-choice>
      ${this.fields(state, wishes, request, busy)}`;
  }

  private fields(state: BenchState, wishes: NoiseWishes, request: NoiseRequest, busy: boolean) {
    return html`<div class="fields">
      <label class="select">
        <span>${msg('Bands shown')}</span>
        <select
          ?disabled=${busy}
          @change=${(event: Event) =>
            this.wish({
              ...wishes,
              bandsPerOctave: Number((event.currentTarget as HTMLSelectElement).value),
            })}
        >
          ${resolutions.map(
            (bands) =>
              html`<option value=${bands} .selected=${bands === request.bandsPerOctave}>
                ${bands === 1 ? msg('whole octaves') : msg(str`1/${bands} octave`)}
              </option>`,
          )}
        </select>
      </label>
      <ll-number
        label=${msg('Averaged over')}
        unit="s"
        min="3"
        max="120"
        .value=${request.averagingSeconds}
        ?disabled=${busy}
        @ll-number=${(event: CustomEvent<number>) =>
          this.wish({ ...wishes, averagingSeconds: event.detail })}
      ></ll-number>
      ${
        request.kind === 'listening'
          ? nothing
          : html`<ll-number
              label=${msg('Level of the noise')}
              unit="dB"
              min="-60"
              max=${state.document.live.capDb}
              .value=${request.gainDb}
              ?disabled=${busy}
              hint=${msg('At first the test level.')}
              @ll-number=${(event: CustomEvent<number>) =>
                this.wish({ ...wishes, gainDb: event.detail })}
            ></ll-number>`
      }
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-noise-controls': NoiseControls;
  }
}
