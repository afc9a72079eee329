import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Bench } from '../../src/session/bench';
import { addSeat, changeSeat, nextSeat, removeSeat } from '../../src/system/declare-seats';
import type { DeclaredSeat, DeclaredSystem } from '../../src/system/declared-system';
import type { Trouble } from '../../src/trouble';
import { BenchController } from '../bench-controller';
import { buttonStyles } from '../controls/button-styles';
import { fieldStyles } from '../controls/field-styles';
import '../controls/number-field';
import type { NumberField } from '../controls/number-field';
import { sharedStyles } from '../theme/shared-styles';
import { declare, isBusy } from './declared-plan';
import { putBack } from './put-back';

/** The other seats, from the main one: named, moved, taken away. */
@customElement('ll-seats')
export class SeatList extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    fieldStyles,
    css`
      :host {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--space-3);
        justify-items: start;
      }

      fieldset {
        margin: 0;
        padding: 0;
        border: 0;
        min-width: 0;
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-2) var(--space-3);
        align-items: start;
      }

      /* Level with the entries, below their names. */
      fieldset button {
        margin-top: calc(var(--text) * var(--leading) + var(--space-1));
      }

      ll-number,
      .field {
        max-width: 9rem;
      }

      .entry input {
        font-family: var(--face);
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @state() private refusal: string | null = null;
  private readonly follow = new BenchController(this);

  protected override render(): TemplateResult | typeof nothing {
    const { state } = this.follow;
    if (!state) return nothing;
    const { system } = state.document;
    const busy = isBusy(state);
    return html`${system.seats.map((seat, index) => this.renderSeat(system, seat, index, busy))}
      ${this.refusal ? html`<p class="signal" role="alert">${this.refusal}</p>` : nothing}
      <button class="ghost" ?disabled=${busy} @click=${() => this.add(system)}>
        ${msg('Add a seat')}
      </button>`;
  }

  private renderSeat(
    system: DeclaredSystem,
    seat: DeclaredSeat,
    index: number,
    busy: boolean,
  ): TemplateResult {
    const put = (change: Partial<DeclaredSeat>): string | null =>
      this.do(msg(str`Change ${seat.name}`), changeSeat(system, index, { ...seat, ...change }));
    const number = (label: string, key: 'rightMetres' | 'backMetres'): TemplateResult =>
      html`<ll-number
        label=${label}
        measure="length"
        decimals="2"
        .value=${seat[key]}
        ?disabled=${busy}
        @ll-number=${(event: CustomEvent<number>) => {
          if (put({ [key]: event.detail }) !== null) {
            void putBack<NumberField>(event, (field) => (field.value = seat[key]));
          }
        }}
      ></ll-number>`;
    return html`<fieldset aria-label=${seat.name} ?disabled=${busy}>
      <span class="field">
        <label for="name-${index}">${msg('Name')}</label>
        <span class="entry"
          ><input
            id="name-${index}"
            maxlength="40"
            autocomplete="off"
            .value=${seat.name}
            @change=${(event: Event) => {
              const input = event.target as HTMLInputElement;
              if (put({ name: input.value }) !== null) input.value = seat.name;
            }}
        /></span>
      </span>
      ${number(msg('To the right'), 'rightMetres')} ${number(msg('Behind'), 'backMetres')}
      <button
        class="ghost"
        @click=${() => this.do(msg(str`Take ${seat.name} away`), removeSeat(system, index))}
      >
        ${msg(str`Take ${seat.name} away`)}
      </button>
    </fieldset>`;
  }

  private add(system: DeclaredSystem): void {
    const seat = nextSeat(system);
    if (seat) this.do(msg(str`Add ${seat.name}`), addSeat(system, seat));
    else this.refusal = msg('There is no free place for another seat: move one first.');
  }

  private do(name: string, system: DeclaredSystem | Trouble): string | null {
    const refused = declare(this.bench, name, system);
    this.refusal = refused === null ? null : msg(str`${refused} Nothing was changed.`);
    return refused;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-seats': SeatList;
  }
}
