import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench, BenchState } from '../../../src/session/bench';
import type { Channel, ChannelLabel } from '../../../src/system/channel';
import { isTrouble } from '../../../src/trouble';
import { BenchController } from '../../bench-controller';
import { buttonStyles } from '../../controls/button-styles';
import { selectStyles } from '../../controls/select-styles';
import '../../plan/speaker-icon';
import { sharedStyles } from '../../theme/shared-styles';
import { changeLive } from '../change-live';
import './plug-plan';
import { plannedTakes, previewSentence, routingOf } from './route-preview';

/** Speaker by speaker the output that feeds it, and how many takes that makes. */
@customElement('ll-routing-table')
export class RoutingTable extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    selectStyles,
    css`
      :host {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--space-3);
        justify-items: start;
        container-type: inline-size;
      }

      .speakers {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: 0 var(--space-5);
        justify-self: stretch;
      }

      .speaker {
        display: grid;
        grid-template-columns: 1.3rem 3.6rem minmax(0, 1fr) 9.5rem;
        gap: var(--space-2);
        align-items: center;
        padding-block: var(--space-1);
        border-bottom: var(--line) solid var(--rule);
      }

      .name {
        color: var(--soft);
        font-size: var(--text-small);
        line-height: 1.2;
      }

      @container (min-width: 40rem) {
        .speakers {
          grid-template-columns: repeat(2, minmax(0, 1fr));
        }
      }

      .lfe {
        display: grid;
        gap: var(--space-1);
        width: min(100%, 26rem);
      }

      .preview {
        font-weight: 700;
      }

      ll-plug-plan {
        justify-self: stretch;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    const { outputs } = routingOf(state);
    const busy = state.activity.kind !== 'idle';
    const plan = plannedTakes(state);
    const told = state.abilities?.kind === 'live';
    return html`<p class="soft">
        ${msg(
          str`${
            told
              ? msg(
                  str`This output has ${outputs} ${outputs === 1 ? msg('channel') : msg('channels')}.`,
                )
              : msg(
                  str`Reckoned with ${outputs} outputs until the browser has told how many there are.`,
                )
          } Several speakers may share one output; they are then taken one after the other.`,
        )}
      </p>
      <div class="speakers" role="group" aria-label=${msg('Output of each speaker')}>
        ${state.layout.channels.map((channel) => this.speaker(channel, state, outputs, busy))}
      </div>
      ${this.lfe(state, outputs, busy)}
      <p class="preview ${isTrouble(plan) ? 'signal' : ''}" role="status">
        ${previewSentence(state)}
      </p>
      ${isTrouble(plan) ? nothing : html`<ll-plug-plan .parts=${plan.parts}></ll-plug-plan>`}
      ${
        Object.keys(state.document.live.routes).length > 0
          ? html`<button
              class="ghost"
              ?disabled=${busy}
              @click=${() => changeLive(this.bench, msg('Clear routing'), { routes: {} })}
            >
              ${msg('Set all to automatic')}
            </button>`
          : nothing
      }`;
  }

  private speaker(channel: Channel, state: BenchState, outputs: number, busy: boolean) {
    const chosen = state.document.live.routes[channel.label] ?? null;
    return html`<label class="speaker">
      <ll-speaker-icon .channel=${channel}></ll-speaker-icon>
      <b class="num">${channel.label}</b>
      <span class="name">${channel.name}</span>
      <select
        ?disabled=${busy}
        aria-label=${msg(str`Output of ${channel.label}, ${channel.name}`)}
        @change=${(event: Event) =>
          this.route(channel.label, (event.currentTarget as HTMLSelectElement).value)}
      >
        <option value="" .selected=${chosen === null}>${msg('automatic')}</option>
        ${outputOptions(outputs, chosen)}
      </select>
    </label>`;
  }

  private lfe({ document }: BenchState, outputs: number, busy: boolean) {
    const { lfeOutput } = document.live;
    return html`<div class="lfe">
      <label class="select">
        <span>${msg('Output the processor replays as LFE')}</span>
        <select
          ?disabled=${busy}
          @change=${(event: Event) => {
            const { value } = event.currentTarget as HTMLSelectElement;
            changeLive(this.bench, msg('Choose LFE output'), {
              lfeOutput: value === '' ? null : Number(value),
            });
          }}
        >
          <option value="" .selected=${lfeOutput === null}>${msg('none')}</option>
          ${outputOptions(outputs, lfeOutput)}
        </select>
      </label>
      <p class="soft small">
        ${msg('A processor plays its LFE channel 10 dB louder than the others. What goes out here is sent 10 dB quieter, so that the sub reads at its own level.')}
      </p>
    </div>`;
  }

  private route(label: ChannelLabel, value: string): void {
    this.bench?.change(msg(str`Route ${label}`), (document) => {
      const others = Object.entries(document.live.routes).filter(([key]) => key !== label);
      const routes: typeof document.live.routes = Object.fromEntries(
        value === '' ? others : [...others, [label, Number(value)]],
      );
      return { ...document, live: { ...document.live, routes } };
    });
  }
}

/** Outputs counted from 1 for people; one that was chosen on a larger device stays in sight. */
function outputOptions(outputs: number, chosen: number | null) {
  const numbers = Array.from({ length: outputs }, (_, index) => index);
  const beyond = chosen !== null && chosen >= outputs ? [chosen] : [];
  return [...numbers, ...beyond].map(
    (index) =>
      html`<option value=${String(index)} .selected=${index === chosen}>
        ${index < outputs ? msg(str`output ${index + 1}`) : msg(str`output ${index + 1}, not there`)}
      </option>`,
  );
}

declare global {
  interface HTMLElementTagNameMap {
    'll-routing-table': RoutingTable;
  }
}
