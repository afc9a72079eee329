import { msg } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { drawPracticeSlip } from '../../../src/rig/draw-practice-slip';
import type { Bench } from '../../../src/session/bench';
import { wantedSettings } from '../../../src/session/derive-proof';
import { BenchController } from '../../bench-controller';
import '../../controls/check-field';
import '../../controls/number-field';
import { sharedStyles } from '../../theme/shared-styles';

/** The practice room: which invented room to probe. */
@customElement('ll-practice-rig')
export class PracticeRig extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-3);
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    return html`<p>
        ${msg(html`Needs nothing. The room, its speakers, its noise and its skewed clock are computed; all that comes out is <b>simulated</b> and marked so.`)}
      </p>
      <ll-number
        label=${msg('Room number')}
        min="0"
        max="999999"
        .value=${state.document.practice.seed}
        ?disabled=${state.activity.kind !== 'idle'}
        hint=${msg('Each whole number is another room; the same number is always the same room.')}
        @ll-number=${(event: CustomEvent<number>) => {
          const seed = Math.round(event.detail);
          this.bench?.change(msg('Choose practice room'), (document) => ({
            ...document,
            practice: { ...document.practice, seed },
          }));
        }}
      ></ll-number>
      <ll-number
        label=${msg('Test level in this room')}
        unit="dB"
        min="-60"
        max="0"
        .value=${state.document.practice.gainDb}
        ?disabled=${state.activity.kind !== 'idle'}
        hint=${msg('Takes of one position at two levels show how the speakers distort and compress.')}
        @ll-number=${(event: CustomEvent<number>) => {
          const gainDb = event.detail;
          this.bench?.change(msg('Set the level of the practice room'), (document) => ({
            ...document,
            practice: { ...document.practice, gainDb },
          }));
        }}
      ></ll-number>
      <ll-check
        label=${msg('Hide a fault in the wiring')}
        hint=${msg('To practise finding it by ear or on a walk: plugs exchanged, one silent, two speakers on one output, or one inverted. Takes play through it as well.')}
        .checked=${state.document.practice.hidden !== null}
        ?disabled=${state.activity.kind !== 'idle'}
        @ll-check=${(event: CustomEvent<boolean>) => this.hide(event.detail)}
      ></ll-check>
      <ll-check
        label=${msg('Mistype something')}
        hint=${msg('To practise proving: one setting is typed or left wrong in the room’s processor. Prove finds it; it is not told here.')}
        .checked=${state.document.practice.slips.length > 0}
        ?disabled=${state.activity.kind !== 'idle'}
        @ll-check=${(event: CustomEvent<boolean>) => this.mistype(event.detail)}
      ></ll-check>`;
  }

  /** Another fault each time one is hidden. */
  private hide(on: boolean): void {
    const hidden = on ? Math.floor(Math.random() * 100_000) : null;
    this.bench?.change(msg('Hide a fault in the wiring'), (document) => ({
      ...document,
      practice: { ...document.practice, hidden },
    }));
  }

  /** Another mistake each time; of those that do harm with what is to be typed. */
  private mistype(on: boolean): void {
    const { state } = this.follow;
    if (!state) return;
    const { proposal, layout } = state;
    const typed = proposal && wantedSettings(proposal, state.document);
    const slips = on ? [drawPracticeSlip(layout, typed, Math.random())] : [];
    this.bench?.change(msg('Mistype something'), (document) => ({
      ...document,
      practice: { ...document.practice, slips },
    }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-practice-rig': PracticeRig;
  }
}
