import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { smoothingKinds, type SmoothingKind } from '../../../dsp/response/smoothing-kind';
import type { ResponseWindow } from '../../../src/inspect/inspection';
import type { BenchState } from '../../../src/session/bench';
import '../../controls/check-field';
import '../../controls/choice';
import '../../controls/number-field';
import { selectStyles } from '../../controls/select-styles';
import { sharedStyles } from '../../theme/shared-styles';
import { positionsOf } from '../take/positions';
import type { InspectWishes } from './inspect-wishes';
import './target-wish';

const smoothingNames: Readonly<Partial<Record<SmoothingKind, string>>> = {
  get none() {
    return msg('none');
  },
  get variable() {
    return msg('varying, fine in the bass');
  },
};

const windows: readonly {
  readonly value: string;
  readonly name: string;
  readonly window: ResponseWindow;
}[] = [
  {
    value: 'whole',
    get name() {
      return msg('the whole response');
    },
    window: { kind: 'whole' },
  },
  {
    value: 'gate 5',
    get name() {
      return msg('the first 5 ms');
    },
    window: { kind: 'gate', milliseconds: 5 },
  },
  {
    value: 'gate 20',
    get name() {
      return msg('the first 20 ms');
    },
    window: { kind: 'gate', milliseconds: 20 },
  },
  {
    value: 'gate 80',
    get name() {
      return msg('the first 80 ms');
    },
    window: { kind: 'gate', milliseconds: 80 },
  },
  {
    value: 'cycles 3',
    get name() {
      return msg('3 periods of each frequency');
    },
    window: { kind: 'cycles', cycles: 3 },
  },
  {
    value: 'cycles 6',
    get name() {
      return msg('6 periods of each frequency');
    },
    window: { kind: 'cycles', cycles: 6 },
  },
  {
    value: 'cycles 15',
    get name() {
      return msg('15 periods of each frequency');
    },
    window: { kind: 'cycles', cycles: 15 },
  },
];

const combinations = [
  {
    value: 'each',
    get label() {
      return msg('Each');
    },
  },
  {
    value: 'average',
    get label() {
      return msg('Average');
    },
  },
  {
    value: 'difference',
    get label() {
      return msg('Difference');
    },
  },
] as const;

/** How responses are drawn: smoothing, window, average or difference, target, seats. Fires `ll-look`. */
@customElement('ll-inspect-controls')
export class InspectControls extends LitElement {
  static override styles = [
    sharedStyles,
    selectStyles,
    css`
      :host {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--space-3);
      }

      .fields {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 9rem), 1fr));
        gap: var(--space-3);
        align-items: start;
      }
    `,
  ];

  @property({ attribute: false }) state: BenchState | null = null;
  @property({ attribute: false }) wishes: InspectWishes | null = null;

  override render() {
    const { state, wishes } = this;
    if (!state || !wishes) return nothing;
    const window = windows.find(
      ({ window: one }) => JSON.stringify(one) === JSON.stringify(wishes.window),
    );
    return html`<div class="fields">
        <label class="select">
          <span>${msg('Smoothing')}</span>
          <select
            @change=${(event: Event) =>
              this.wish({
                smoothing: (event.target as HTMLSelectElement).value as SmoothingKind,
              })}
          >
            ${smoothingKinds.map(
              (kind) =>
                html`<option value=${kind} ?selected=${kind === wishes.smoothing}>
                  ${smoothingNames[kind] ?? msg(str`${kind} octave`)}
                </option>`,
            )}
          </select>
        </label>
        <label class="select">
          <span>${msg('Part of the sound')}</span>
          <select
            @change=${(event: Event) => {
              const { value } = event.target as HTMLSelectElement;
              const chosen = windows.find((one) => one.value === value);
              if (chosen) this.wish({ window: chosen.window });
            }}
          >
            ${windows.map(
              ({ value, name }) =>
                html`<option value=${value} ?selected=${value === window?.value}>${name}</option>`,
            )}
          </select>
        </label>
      </div>
      <ll-choice
        label=${msg('Several curves')}
        .options=${combinations}
        .value=${wishes.combine}
        @ll-pick=${(event: CustomEvent<string>) => {
          const chosen = combinations.find(({ value }) => value === event.detail);
          if (chosen) this.wish({ combine: chosen.value });
        }}
      ></ll-choice>
      <ll-check
        label=${msg('Level them')}
        hint=${msg('Each at 0 dB from 500 to 2000 Hz; subs from 40 to 80 Hz.')}
        .checked=${wishes.levelled}
        @ll-check=${(event: CustomEvent<boolean>) => this.wish({ levelled: event.detail })}
      ></ll-check>
      ${this.seats(state, wishes)} ${this.target(wishes)}`;
  }

  private seats({ document }: BenchState, wishes: InspectWishes) {
    const others = positionsOf(document).filter(
      ({ position, takes }) => takes > 0 && position.id !== document.position.id,
    );
    return others.map(
      ({ position: { id, name } }) =>
        html`<ll-check
          label=${msg(str`Also ${name}`)}
          .checked=${wishes.seats.includes(id)}
          @ll-check=${(event: CustomEvent<boolean>) =>
            this.wish({
              seats: event.detail
                ? [...wishes.seats, id]
                : wishes.seats.filter((one) => one !== id),
            })}
        ></ll-check>`,
    );
  }

  private target({ target, overTarget, combine }: InspectWishes) {
    return html`<ll-target-wish
        .target=${target}
        @ll-target=${(event: CustomEvent<InspectWishes['target']>) =>
          this.wish({ target: event.detail })}
      ></ll-target-wish>
      ${
        target === null || combine === 'difference'
          ? nothing
          : html`<ll-check
              label=${msg('Draw what they have over it')}
              .checked=${overTarget}
              @ll-check=${(event: CustomEvent<boolean>) => this.wish({ overTarget: event.detail })}
            ></ll-check>`
      }`;
  }

  private wish(change: Partial<InspectWishes>): void {
    this.dispatchEvent(new CustomEvent('ll-look', { detail: change }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-inspect-controls': InspectControls;
  }
}
