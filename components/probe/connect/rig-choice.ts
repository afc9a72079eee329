import { msg } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { RigKind } from '../../../src/rig/port';
import type { Bench } from '../../../src/session/bench';
import { BenchController } from '../../bench-controller';
import '../../controls/choice';
import { sharedStyles } from '../../theme/shared-styles';

const rigs: readonly { value: RigKind; label: string }[] = [
  {
    value: 'practice',
    get label() {
      return msg('Practice room');
    },
  },
  {
    value: 'recording',
    get label() {
      return msg('Recording');
    },
  },
  {
    value: 'live',
    get label() {
      return msg('Live');
    },
  },
];

/** How the speakers are reached. */
@customElement('ll-rig-choice')
export class RigChoice extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    return html`<ll-choice
      label=${msg('How the speakers are reached')}
      .options=${rigs}
      .value=${state.document.rig}
      ?disabled=${state.activity.kind !== 'idle'}
      @ll-pick=${(event: CustomEvent<string>) => {
        const picked = rigs.find(({ value }) => value === event.detail);
        if (picked) this.bench?.setRig(picked.value);
      }}
    ></ll-choice>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-rig-choice': RigChoice;
  }
}
