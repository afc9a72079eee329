import { msg } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench } from '../../../src/session/bench';
import { BenchController } from '../../bench-controller';
import { durationText, numberText } from '../../../src/locale/number-text';
import '../../controls/big-number';
import { buttonStyles } from '../../controls/button-styles';
import '../../controls/progress-bar';
import { soundLevelUnit } from '../../strip/strip-words';
import { sharedStyles } from '../../theme/shared-styles';

/** The running climb in numbers that can be read from the seat. */
@customElement('ll-climb-progress')
export class ClimbProgress extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-4);
      }

      .numbers {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-3) var(--space-6);
      }

      .ghost {
        justify-self: start;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);

  override render() {
    const activity = this.follow.state?.activity;
    if (activity?.kind !== 'climbing') return nothing;
    const { gainDb, marginDb, soundLevel, progress, secondsLeft } = activity.climb;
    return html`<ll-progress label=${msg('Climb')} .value=${progress}></ll-progress>
      <div class="numbers">
        <ll-big-number
          label=${msg('Test level')}
          value=${numberText(gainDb, 1)}
          unit="dB"
        ></ll-big-number>
        <ll-big-number
          label=${msg('Over the noise')}
          value=${numberText(marginDb, 1)}
          unit="dB"
        ></ll-big-number>
        ${
          soundLevel
            ? html`<ll-big-number
                label=${msg('At the microphone')}
                value=${numberText(soundLevel.db, 1)}
                unit=${soundLevelUnit(soundLevel)}
              ></ll-big-number>`
            : nothing
        }
        <ll-big-number
          label=${msg('Time left, at most')}
          value=${durationText(secondsLeft)}
        ></ll-big-number>
      </div>
      <button class="ghost" @click=${() => this.bench?.stop()}>${msg('Stop the climb')}</button>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-climb-progress': ClimbProgress;
  }
}
