import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing, type PropertyValues } from 'lit';
import { customElement, property } from 'lit/decorators.js';

import { findAgain } from '../../../src/rig/live/list-devices';
import type { Bench } from '../../../src/session/bench';
import type { ChosenDevice } from '../../../src/session/document';
import { BenchController } from '../../bench-controller';
import { buttonStyles } from '../../controls/button-styles';
import { selectStyles } from '../../controls/select-styles';
import { sharedStyles } from '../../theme/shared-styles';
import { changeLive } from '../change-live';

type Which = 'output' | 'microphone';

/** The chosen device's id stands for itself while nothing like it is plugged in. */
const away = () => msg('not plugged in');

/** Which output plays and which microphone listens; the lists follow what is plugged in. */
@customElement('ll-device-pickers')
export class DevicePickers extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    selectStyles,
    css`
      :host {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--space-3);
      }

      .names {
        display: grid;
        gap: var(--space-2);
        justify-items: start;
      }

      .away {
        color: var(--signal);
        font-weight: 700;
      }

      [role='status']:empty {
        display: none;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);
  private asked: Bench | null = null;

  /** Looks once for every bench it is handed; the bench watches what changes from then on. */
  protected override updated(changed: PropertyValues): void {
    if (!changed.has('bench') || !this.bench || this.bench === this.asked) return;
    this.asked = this.bench;
    void this.bench.lookAtDevices(false);
  }

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    const { devices } = state;
    const busy = state.activity.kind !== 'idle';
    const { output, microphone } = state.document.live;
    const outputs = devices?.outputs ?? [];
    const microphones = devices?.microphones ?? [];
    const nameless = microphones.some(({ name }) => name === '');
    // While names are hidden nobody can tell whether a device chosen before is there.
    const told = devices !== null && !nameless;
    return html`${this.choice('output', msg('Output'), outputs, output, busy, told)}
      ${
        devices !== null && outputs.length === 0
          ? html`<p class="soft small">
              ${msg('This browser names no outputs: sound leaves by the one the system has chosen.')}
            </p>`
          : nothing
      }
      ${this.choice('microphone', msg('Microphone'), microphones, microphone, busy, told)}
      ${
        devices !== null && microphones.length === 0
          ? html`<p class="signal">
              ${msg('No microphone is plugged in, or the browser does not tell of it.')}
            </p>`
          : nothing
      }
      ${
        nameless
          ? html`<div class="names">
              <button
                class="ghost"
                ?disabled=${busy}
                @click=${() => void this.bench?.lookAtDevices(true)}
              >
                ${msg('Allow the microphone to see names')}
              </button>
              <p class="soft small">
                ${msg('The browser tells names only once a microphone has been allowed. Nothing is recorded.')}
              </p>
            </div>`
          : nothing
      }
      <p role="status" class="signal">${devices?.change ?? nothing}</p>`;
  }

  private choice(
    which: Which,
    label: string,
    devices: readonly ChosenDevice[],
    chosen: ChosenDevice | null,
    busy: boolean,
    told: boolean,
  ) {
    const found = chosen ? findAgain(chosen, devices) : null;
    const missing = chosen !== null && found === null;
    const value = missing ? away() : (found?.id ?? '');
    return html`<label class="select">
      <span>${label}</span>
      <select
        ?disabled=${busy}
        @change=${(event: Event) => {
          const { value: id } = event.currentTarget as HTMLSelectElement;
          if (id === away()) return;
          const picked = devices.find((one) => one.id === id) ?? null;
          changeLive(
            this.bench,
            msg(str`Choose ${which}`),
            which === 'output' ? { output: picked } : { microphone: picked },
          );
        }}
      >
        <option value="" .selected=${value === ''}>${msg('as the system chooses')}</option>
        ${devices.map(
          ({ id, name }, index) =>
            html`<option value=${id} .selected=${id === value}>
              ${name || `${label} ${index + 1}`}
            </option>`,
        )}
        ${
          missing
            ? html`<option value=${away()} .selected=${true}>
                ${chosen.name || msg(str`the ${which} chosen before`)}${told ? msg(', not plugged in now') : ''}
              </option>`
            : nothing
        }
      </select>
      ${
        missing && told
          ? html`<span class="away small"
              >${msg('Not plugged in now. Plug it in, or choose another.')}</span
            >`
          : nothing
      }
    </label>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-device-pickers': DevicePickers;
  }
}
