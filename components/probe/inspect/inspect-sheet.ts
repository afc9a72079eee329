import { msg } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Inspector } from '../../../src/inspect/inspection';
import type { Bench, BenchState } from '../../../src/session/bench';
import type { Channel, ChannelLabel } from '../../../src/system/channel';
import { BenchController } from '../../bench-controller';
import { buttonStyles } from '../../controls/button-styles';
import '../../controls/choice';
import '../../plan/speaker-icon';
import { sharedStyles } from '../../theme/shared-styles';
import { stageStyles } from '../../theme/stage-styles';
import './bass-view';
import './curves-view';
import './decay-view';
import './drive-view';
import './inspect-controls';
import { shownChannels, shownSources } from './inspect-sources';
import { inspectWishes, type InspectView, type InspectWishes } from './inspect-wishes';

const views: readonly { readonly value: InspectView; readonly label: string }[] = [
  {
    value: 'response',
    get label() {
      return msg('Response');
    },
  },
  {
    value: 'distortion',
    get label() {
      return msg('Distortion');
    },
  },
  {
    value: 'phase',
    get label() {
      return msg('Phase and delay');
    },
  },
  {
    value: 'time',
    get label() {
      return msg('Time');
    },
  },
  {
    value: 'decay',
    get label() {
      return msg('Decay');
    },
  },
  {
    value: 'bass',
    get label() {
      return msg('Bass decay');
    },
  },
];
/** Views that draw several speakers; the others show the first of those chosen. */
const several: readonly InspectView[] = ['response', 'phase', 'time'];

/** The sixth sheet of Probe: a look into the sound that was captured, speaker by speaker. */
@customElement('ll-inspect-sheet')
export class InspectSheet extends LitElement {
  static override styles = [
    sharedStyles,
    stageStyles,
    buttonStyles,
    css`
      @container (min-width: 52rem) {
        .sheets {
          grid-template-columns: minmax(0, 1fr) minmax(0, 19rem);
        }
      }

      .speakers {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(6.2rem, 1fr));
        gap: 0 var(--space-2);
        margin: 0;
        padding: 0;
        border: 0;
        min-width: 0;
      }

      .speakers legend {
        padding: 0;
        font-weight: 700;
      }

      .speakers label {
        display: grid;
        grid-template-columns: 1.25rem 1.4rem minmax(0, 1fr);
        gap: var(--space-1);
        align-items: center;
        min-height: var(--target);
        cursor: pointer;
        white-space: nowrap;
      }

      input {
        width: 1.25rem;
        height: 1.25rem;
        margin: 0;
        accent-color: var(--ink);
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) selected: ChannelLabel | null = null;
  private readonly follow = new BenchController(this);
  private inspector: Inspector | null = null;

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.inspector?.close();
    this.inspector = null;
  }

  override render() {
    const { state } = this.follow;
    if (!state || !this.bench) return nothing;
    if (!state.readings) return nothingTaken();
    const wishes = inspectWishes.of(this.bench);
    const channels = shownChannels(state, wishes, this.selected);
    return html`<div class="sheets">
      <section class="sheet" aria-label=${msg('What is looked at')}>
        <ll-choice
          label=${msg('Look at')}
          .options=${views}
          .value=${wishes.view}
          @ll-pick=${(event: CustomEvent<string>) => {
            const chosen = views.find(({ value }) => value === event.detail);
            if (chosen) this.wish({ view: chosen.value });
          }}
        ></ll-choice>
        ${this.view(state, wishes, channels)}
      </section>
      <section class="sheet" aria-label=${msg('Of which speakers, and how')}>
        ${this.speakers(state, wishes, channels)}
        ${
          wishes.view === 'response'
            ? html`<ll-inspect-controls
                .state=${state}
                .wishes=${wishes}
                @ll-look=${(event: CustomEvent<Partial<InspectWishes>>) => this.wish(event.detail)}
              ></ll-inspect-controls>`
            : nothing
        }
      </section>
    </div>`;
  }

  private view(state: BenchState, wishes: InspectWishes, channels: readonly Channel[]) {
    const sources = shownSources(state, wishes, this.selected);
    const { bench } = this;
    // One for all views: it keeps what it has heard of a take.
    const inspector = (this.inspector ??= bench?.inspect() ?? null);
    switch (wishes.view) {
      case 'response':
      case 'phase':
      case 'time':
        return html`<ll-curves-view
          .bench=${bench}
          .inspector=${inspector}
          .wishes=${wishes}
          .sources=${sources}
        ></ll-curves-view>`;
      case 'distortion':
        return html`<ll-drive-view .state=${state} .channel=${channels[0]}></ll-drive-view>`;
      case 'decay':
        return html`<ll-decay-view
          .bench=${bench}
          .inspector=${inspector}
          .source=${sources[0] ?? null}
        ></ll-decay-view>`;
      case 'bass':
        return html`<ll-bass-view
          .inspector=${inspector}
          .source=${sources[0] ?? null}
        ></ll-bass-view>`;
    }
  }

  private speakers(state: BenchState, { view }: InspectWishes, channels: readonly Channel[]) {
    const many = several.includes(view);
    const shown = many ? channels : channels.slice(0, 1);
    return html`<fieldset class="speakers">
      <legend>${many ? msg('Speakers') : msg('Speaker')}</legend>
      ${state.layout.channels.map((channel) => {
        const on = shown.some(({ label }) => label === channel.label);
        return html`<label title=${channel.name}>
          <input
            type=${many ? 'checkbox' : 'radio'}
            name="speaker"
            .checked=${on}
            @change=${() => this.choose(channel.label, many, shown)}
          />
          <ll-speaker-icon .channel=${channel}></ll-speaker-icon>
          <span>${channel.label}</span>
        </label>`;
      })}
    </fieldset>`;
  }

  private choose(label: ChannelLabel, many: boolean, shown: readonly Channel[]): void {
    const labels = shown.map((one) => one.label);
    const others = labels.filter((one) => one !== label);
    const channels = !many ? [label] : labels.includes(label) ? others : [...labels, label];
    this.wish({ channels });
  }

  private wish(change: Partial<InspectWishes>): void {
    if (!this.bench) return;
    inspectWishes.keep(this.bench, { ...inspectWishes.of(this.bench), ...change });
    this.requestUpdate();
  }
}

const nothingTaken = () =>
  html`<section class="sheet" aria-label=${msg('Nothing to look at')}>
    <p>${msg('There is nothing to look at yet: run a take first.')}</p>
    <a class="ghost" href="#probe/take">${msg('Go to the take')}</a>
  </section>`;

declare global {
  interface HTMLElementTagNameMap {
    'll-inspect-sheet': InspectSheet;
  }
}
