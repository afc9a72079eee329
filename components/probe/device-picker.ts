import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { listDevices, mediaDevices, type AudioDevice } from '../../src/rig/live/list-devices';
import type { Bench } from '../../src/session/bench';
import type { SessionDocument } from '../../src/session/document';
import { BenchController } from '../bench-controller';
import { sharedStyles } from '../theme/shared-styles';

type DeviceKey = 'microphoneId' | 'outputId';

/** Which microphone listens and which output plays; the list follows what is plugged in. */
@customElement('ll-device-picker')
export class DevicePicker extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-3);
      }

      label {
        display: grid;
        gap: var(--space-1);
        font-weight: 700;
      }

      select {
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
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @state() private microphones: readonly AudioDevice[] = [];
  @state() private outputs: readonly AudioDevice[] = [];
  private readonly follow = new BenchController(this);

  override connectedCallback(): void {
    super.connectedCallback();
    mediaDevices()?.addEventListener('devicechange', this.list);
    this.list();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    mediaDevices()?.removeEventListener('devicechange', this.list);
  }

  private readonly list = (): void => {
    const keep = (microphones: readonly AudioDevice[], outputs: readonly AudioDevice[]) => {
      this.microphones = microphones;
      this.outputs = outputs;
    };
    void listDevices().then(
      ({ microphones, outputs }) => keep(microphones, outputs),
      () => keep([], []),
    );
  };

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    const busy = state.activity.kind !== 'idle';
    const { microphoneId, outputId } = state.document.live;
    const nameless = this.microphones.some(({ name }) => name === '');
    return html`${this.choice('Microphone', 'microphoneId', this.microphones, microphoneId, busy)}
    ${
      this.outputs.length > 0 || outputId !== null
        ? this.choice('Output', 'outputId', this.outputs, outputId, busy)
        : nothing
    }
    ${
      nameless
        ? html`<p class="soft small">
            The browser tells the names once the microphone has been allowed, in the first take.
          </p>`
        : nothing
    }`;
  }

  private choice(
    label: string,
    key: DeviceKey,
    devices: readonly AudioDevice[],
    chosen: string | null,
    busy: boolean,
  ) {
    const missing = chosen !== null && !devices.some(({ id }) => id === chosen);
    return html`<label>
      ${label}
      <select
        ?disabled=${busy}
        @change=${(event: Event) => {
          const { value } = event.currentTarget as HTMLSelectElement;
          this.set(`Choose ${label.toLowerCase()}`, { [key]: value === '' ? null : value });
        }}
      >
        <option value="" ?selected=${chosen === null}>as the system chooses</option>
        ${devices.map(
          ({ id, name }, index) =>
            html`<option value=${id} ?selected=${id === chosen}>
              ${name || `${label} ${index + 1}`}
            </option>`,
        )}
        ${missing ? html`<option value=${chosen} selected>not plugged in now</option>` : nothing}
      </select>
    </label>`;
  }

  private set(name: string, live: Partial<SessionDocument['live']>): void {
    this.bench?.change(name, (document) => ({ ...document, live: { ...document.live, ...live } }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-device-picker': DevicePicker;
  }
}
