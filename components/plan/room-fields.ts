import { msg } from '@lit/localize';
import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Bench } from '../../src/session/bench';
import { setRoom } from '../../src/system/declare-seats';
import type { DeclaredRoom } from '../../src/system/declared-system';
import { faultsOfRoom } from '../../src/system/room-outline';
import { BenchController } from '../bench-controller';
import { buttonStyles } from '../controls/button-styles';
import '../controls/number-field';
import { sharedStyles } from '../theme/shared-styles';
import { declare, isBusy } from './declared-plan';
import { keepRoomDraft, roomDraft, type RoomDraft } from './room-draft';

const entries = (): readonly (readonly [keyof DeclaredRoom, string])[] => [
  ['lengthMetres', msg('Length, front to back')],
  ['widthMetres', msg('Width')],
  ['heightMetres', msg('Height')],
  ['seatFromFrontMetres', msg('Seat from the front wall')],
  ['seatFromLeftMetres', msg('Seat from the left wall')],
  ['earHeightMetres', msg('Ears above the floor')],
];

/** Something to start typing from; no room was measured. */
const start: DeclaredRoom = {
  lengthMetres: 5,
  widthMetres: 4,
  heightMetres: 2.5,
  seatFromFrontMetres: 3,
  seatFromLeftMetres: 2,
  earHeightMetres: 1.2,
};

/**
 * The outline of the room and the main seat in it. It changes in one go, once it makes sense; until
 * then what was typed is kept, and what is wrong with it is said at its field.
 */
@customElement('ll-room')
export class RoomFields extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      :host {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--space-3);
      }

      .fields {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(9rem, 1fr));
        gap: var(--space-2) var(--space-3);
        align-items: end;
      }

      .fields:has([wrong]) {
        align-items: start;
      }

      .actions {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-2);
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @state() private refusal: string | null = null;
  private readonly follow = new BenchController(this);

  protected override render(): TemplateResult | typeof nothing {
    const { bench } = this;
    const { state } = this.follow;
    if (!bench || !state) return nothing;
    const { room } = state.document.system;
    const busy = isBusy(state);
    const draft = roomDraft(bench);
    const shown = { ...(room ?? start), ...draft };
    const faults = faultsOfRoom(shown);
    return html`<div class="fields">
        ${entries().map(
          ([key, label]) =>
            html`<ll-number
              label=${label}
              measure="length"
              decimals="2"
              .value=${shown[key]}
              .fault=${key in draft ? (faults[key] ?? null) : null}
              ?disabled=${busy}
              @ll-number=${(event: CustomEvent<number>) =>
                this.type({ ...draft, [key]: event.detail })}
            ></ll-number>`,
        )}
      </div>
      ${this.refusal ? html`<p class="signal" role="alert">${this.refusal}</p>` : nothing}
      <div class="actions">
        <button
          class="ghost"
          ?disabled=${busy || (room !== null && Object.keys(draft).length === 0)}
          @click=${() => this.use(msg('Draw the room'), shown)}
        >
          ${room ? msg('Draw it like this') : msg('Draw the room')}
        </button>
        ${
          room
            ? html`<button
                class="ghost"
                ?disabled=${busy}
                @click=${() => this.use(msg('Take the outline away'), null)}
              >
                ${msg('Take the outline away')}
              </button>`
            : nothing
        }
      </div>`;
  }

  private type(draft: RoomDraft): void {
    if (!this.bench) return;
    keepRoomDraft(this.bench, draft);
    this.refusal = null;
    this.requestUpdate();
  }

  private use(name: string, room: DeclaredRoom | null): void {
    if (!this.bench) return;
    const { system } = this.bench.state.document;
    this.refusal = declare(this.bench, name, setRoom(system, room));
    if (this.refusal === null) keepRoomDraft(this.bench, {});
    this.requestUpdate();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-room': RoomFields;
  }
}
