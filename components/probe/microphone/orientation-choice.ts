import { msg } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { MicrophoneSetup } from '../../../src/microphone/calibration';
import type { Bench } from '../../../src/session/bench';
import { BenchController } from '../../bench-controller';
import '../../controls/choice';
import { sharedStyles } from '../../theme/shared-styles';
import { changeMicrophone } from './change-microphone';

const orientations: readonly { value: MicrophoneSetup['orientation']; label: string }[] = [
  {
    value: 'up',
    get label() {
      return msg('Up');
    },
  },
  {
    value: 'at the speakers',
    get label() {
      return msg('At the speakers');
    },
  },
  {
    value: 'not noted',
    get label() {
      return msg('Not noted');
    },
  },
];

/** Where the microphone points; goes into the record. */
@customElement('ll-orientation-choice')
export class OrientationChoice extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
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
    return html`<ll-choice
        label=${msg('The microphone points')}
        .options=${orientations}
        .value=${state.document.microphone.orientation}
        ?disabled=${state.activity.kind !== 'idle'}
        @ll-pick=${(event: CustomEvent<string>) => {
          const picked = orientations.find(({ value }) => value === event.detail);
          if (!picked) return;
          changeMicrophone(this.bench, msg('Note orientation'), { orientation: picked.value });
        }}
      ></ll-choice>
      <p class="soft small">
        ${msg('A calibration file holds for one direction: one made at 90° for a microphone that points up, one made at 0° for one that points at the speaker. Keep it the same for all speakers.')}
      </p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-orientation-choice': OrientationChoice;
  }
}
