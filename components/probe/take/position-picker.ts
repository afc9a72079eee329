import { withUnit } from '../../../src/locale/number-text';
import { isImperial } from '../../../src/locale/length-text';
import { msg, str } from '@lit/localize';
import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { LaterElement } from '../../later-element';
import type { Bench } from '../../../src/session/bench';
import type { PortSize } from '../../../src/reading/close-to';
import type { ChannelLabel } from '../../../src/system/channel';
import { BenchController } from '../../bench-controller';
import { buttonStyles } from '../../controls/button-styles';
import '../../controls/check-field';
import '../../controls/number-field';
import { selectStyles } from '../../controls/select-styles';
import { sharedStyles } from '../../theme/shared-styles';
import {
  discardTakes,
  nextSeatName,
  positionsOf,
  renamePosition,
  seatsToCome,
  type UsedPosition,
  hearConeOnly,
  usualPort,
  withPortSize,
} from './positions';

/** Where the microphone stands: named, moved to a new place, or back at an earlier one. */
@customElement('ll-position-picker')
export class PositionPicker extends LaterElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    selectStyles,
    css`
      :host {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--space-2);
      }

      .row {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-2);
      }

      .row .ghost {
        padding-inline: var(--space-3);
      }

      input {
        width: 100%;
        min-height: var(--target);
        padding: var(--space-1) var(--space-2);
        border: var(--line) solid var(--edge);
        border-radius: var(--radius);
        background: var(--sheet);
        color: var(--ink);
        font: inherit;
        font-weight: 400;
      }

      input:disabled {
        border-color: var(--rule);
        color: var(--soft);
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) selected: ChannelLabel | null = null;
  /** Position whose takes are about to be discarded, once more asked for. */
  @state() private doubted: string | null = null;
  private readonly follow = new BenchController(this);

  override render() {
    const now = this.follow.state;
    if (!now) return nothing;
    const { document, layout } = now;
    const busy = now.activity.kind !== 'idle';
    const used = positionsOf(document);
    const toCome = seatsToCome(document);
    const here = used.find(({ position }) => position.id === document.position.id);
    const near = this.selected ?? layout.channels[0]?.label ?? 'FL';
    return html`${
        used.length + toCome.length > 1
          ? html`<label class="select">
              <span>${msg('The microphone stands at')}</span>
              <select ?disabled=${busy} @change=${this.choose}>
                ${used.map(
                  ({ position, takes }) =>
                    html`<option
                      value=${position.id}
                      .selected=${position.id === document.position.id}
                    >
                      ${position.name}, ${takesText(takes)}
                    </option>`,
                )}
                ${
                  toCome.length > 0
                    ? html`<optgroup label=${msg('Seats of the plan')}>
                        ${toCome.map((name) => html`<option data-seat=${name}>${name}</option>`)}
                      </optgroup>`
                    : nothing
                }
              </select>
            </label>`
          : nothing
      }
      <label class="select">
        <span>${msg('Name of this position')}</span>
        <input
          maxlength="60"
          autocomplete="off"
          spellcheck="false"
          .value=${document.position.name}
          ?disabled=${busy}
          @change=${this.rename}
        />
      </label>
      <div class="row">
        <button
          class="ghost"
          ?disabled=${busy}
          @click=${() => this.bench?.setPosition({ name: nextSeatName(document), kind: 'seat' })}
        >
          ${msg('New seat')}
        </button>
        <button
          class="ghost"
          ?disabled=${busy}
          @click=${() =>
            this.bench?.setPosition({
              name: msg(str`Close to ${near}`),
              kind: 'close',
              close: { channel: near, coneOnly: false },
            })}
        >
          ${msg(str`Close to ${near}`)}
        </button>
      </div>
      ${
        document.position.close?.port ? this.portSizes(document.position.close.port, busy) : nothing
      }
      ${
        document.position.close && !document.position.close.port
          ? html`<ll-check
              label=${msg('It has a port that is not heard here')}
              hint=${msg('The cone of a ported box alone: read wider, unless the port is taken by itself too.')}
              .checked=${document.position.close.coneOnly}
              ?disabled=${busy}
              @ll-check=${(event: CustomEvent<boolean>) =>
                this.bench?.change(msg('Say what is heard close'), (before) =>
                  hearConeOnly(before, event.detail),
                )}
            ></ll-check>`
          : nothing
      }
      ${
        document.position.close?.coneOnly
          ? html`<button
              class="ghost"
              ?disabled=${busy}
              @click=${() => this.moveToPort(document.position.close?.channel ?? near)}
            >
              ${msg(str`Port of ${document.position.close.channel}`)}
            </button>`
          : nothing
      }
      ${here && here.takes > 0 ? this.discard(here, busy) : nothing}
      <p class="soft small">
        ${
          document.position.kind === 'close'
            ? document.position.close?.port
              ? msg(
                  'Port: the microphone level with its mouth, in the middle, at the same gain and volume as before the cone. The roll-off is then that of cone and port together.',
                )
              : msg(
                  str`Close: the microphone ${closeText()} before the middle of the woofer, turned down first, for the speaker’s own roll-off without the room.`,
                )
            : msg(
                'Takes of one position are joined. Choose a new one as soon as the microphone moves.',
              )
        }
      </p>`;
  }

  /** Back at a position by its id, or at a seat of the plan for the first time. */
  private readonly choose = (event: Event): void => {
    const { value, selectedOptions } = event.currentTarget as HTMLSelectElement;
    const name = selectedOptions[0]?.dataset['seat'];
    this.bench?.setPosition(name === undefined ? value : { name, kind: 'seat' });
  };

  private moveToPort(channel: ChannelLabel): void {
    const close = { channel, coneOnly: false, port: usualPort };
    this.bench?.setPosition({ name: msg(str`Port of ${channel}`), kind: 'close', close });
  }

  private portSizes({ coneMetres, portMetres }: PortSize, busy: boolean) {
    const field = (key: keyof PortSize, label: string, hint: string, metres: number) =>
      html`<ll-number
        label=${label}
        unit="cm"
        hint=${hint}
        .value=${100 * metres}
        .min=${key === 'coneMetres' ? 50 * portMetres : 1}
        .max=${key === 'portMetres' ? 200 * coneMetres : 100}
        .decimals=${1}
        ?disabled=${busy}
        @ll-number=${(event: CustomEvent<number>) =>
          this.bench?.change(msg('Say how wide cone and port are'), (before) =>
            withPortSize(before, { [key]: event.detail / 100 }),
          )}
      ></ll-number>`;
    return html`${field(
      'portMetres',
      msg('Diameter of the port'),
      msg(
        'A slot: twice the root of its area over 3.14. Several ports alike: their number times one.',
      ),
      portMetres,
    )}
    ${field('coneMetres', msg('Diameter of the cone'), msg('To the middle of its surround.'), coneMetres)}`;
  }

  private discard({ position, takes }: UsedPosition, busy: boolean) {
    const { id, name } = position;
    if (this.doubted !== id) {
      return html`<div>
        <button class="plain" ?disabled=${busy} @click=${() => (this.doubted = id)}>
          ${msg(str`Discard ${takes === 1 ? msg('the take') : msg(str`the ${takes} takes`)} of ${name}`)}
        </button>
      </div>`;
    }
    return html`<div class="row">
      <button
        class="ghost"
        ?disabled=${busy}
        @click=${() => {
          this.doubted = null;
          this.bench?.change(msg('Discard takes'), (document) => discardTakes(document, id));
        }}
      >
        ${msg('Discard for good')}
      </button>
      <button class="ghost" @click=${() => (this.doubted = null)}>${msg('Keep')}</button>
    </div>`;
  }

  private readonly rename = (event: Event): void => {
    const input = event.target as HTMLInputElement;
    const position = this.follow.state?.document.position;
    const name = input.value.trim();
    if (!position || name === '') {
      input.value = position?.name ?? '';
      return;
    }
    this.bench?.change(msg('Name position'), (document) =>
      renamePosition(document, position.id, name),
    );
  };
}

function takesText(takes: number): string {
  if (takes === 0) return msg('no take yet');
  return takes === 1 ? msg('1 take') : msg(str`${takes} takes`);
}

declare global {
  interface HTMLElementTagNameMap {
    'll-position-picker': PositionPicker;
  }
}

/** How near the woofer the microphone is held. */
function closeText(): string {
  return isImperial() ? withUnit('½ to 1', 'in') : withUnit('1 to 2', 'cm');
}
