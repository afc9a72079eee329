import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { RigKind } from '../../src/rig/port';
import type { Bench, BenchState } from '../../src/session/bench';
import { scheduleTake } from '../../src/take/schedule-take';
import { BenchController } from '../bench-controller';
import { durationText } from '../charts/number-text';
import { buttonStyles } from '../controls/button-styles';
import '../controls/choice';
import { sharedStyles } from '../theme/shared-styles';
import './live-rig';
import './practice-rig';
import './recording-rig';
import { currentReadings } from './take-lanes';

const rigs: readonly { value: RigKind; label: string }[] = [
  { value: 'practice', label: 'Practice room' },
  { value: 'recording', label: 'Recording' },
  { value: 'live', label: 'Live' },
];

/** How the speakers are reached, what that needs, and the button that starts a take. */
@customElement('ll-rig-picker')
export class RigPicker extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-4);
      }

      .go {
        justify-self: start;
      }

      .run {
        display: grid;
        gap: var(--space-2);
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    const { rig } = state.document;
    return html`<ll-choice
        label="How the speakers are reached"
        .options=${rigs}
        .value=${rig}
        ?disabled=${state.activity.kind !== 'idle'}
        @ll-pick=${(event: CustomEvent<string>) => {
          const picked = rigs.find(({ value }) => value === event.detail);
          if (picked) this.bench?.setRig(picked.value);
        }}
      ></ll-choice>
      ${this.panel(rig)} ${rig === 'recording' ? nothing : this.run(state)}`;
  }

  private panel(rig: RigKind) {
    switch (rig) {
      case 'practice':
        return html`<ll-practice-rig .bench=${this.bench}></ll-practice-rig>`;
      case 'recording':
        return html`<ll-recording-rig .bench=${this.bench}></ll-recording-rig>`;
      case 'live':
        return html`<ll-live-rig .bench=${this.bench}></ll-live-rig>`;
    }
  }

  private run(state: BenchState) {
    const { lengthSamples, sampleRate } = scheduleTake(state.layout);
    const again = currentReadings(state) !== null;
    return html`<div class="run">
      <button
        class="go"
        ?disabled=${state.activity.kind !== 'idle'}
        @click=${() => void this.bench?.startTake()}
      >
        ${again ? 'Run the take again' : 'Run the take'}
      </button>
      <p class="soft small">
        The take lasts
        ${durationText(lengthSamples / sampleRate)}${
          state.document.rig === 'practice' ? '; the practice room computes it faster.' : '.'
        }
      </p>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-rig-picker': RigPicker;
  }
}
