import { msg, str } from '@lit/localize';
import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { LaterElement } from '../../later-element';
import type { Bench } from '../../../src/session/bench';
import type { TakeSettings as Settings } from '../../../src/take/take-plan';
import { BenchController } from '../../bench-controller';
import { numberText, thinSpace } from '../../../src/locale/number-text';
import '../../controls/check-field';
import '../../controls/number-field';
import { sharedStyles } from '../../theme/shared-styles';

/** How takes are made: sweep length, averages, pause, overlap, repeats; folded into a sentence. */
@customElement('ll-take-settings')
export class TakeSettings extends LaterElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
      }

      summary {
        min-height: var(--target);
        align-content: center;
        cursor: pointer;
      }

      .fields {
        display: grid;
        gap: var(--space-3);
        padding-block: var(--space-2);
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);

  private set(name: string, take: Partial<Settings>): void {
    this.bench?.change(name, (document) => ({ ...document, take: { ...document.take, ...take } }));
  }

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    const { take } = state.document;
    const busy = state.activity.kind !== 'idle';
    return html`<details>
      <summary><b>${msg('How the take is made.')}</b> ${settingsSentence(take)}</summary>
      <div class="fields">
        <ll-number
          label=${msg('Sweep of each speaker')}
          unit="s"
          min="0.5"
          max="30"
          decimals="1"
          .value=${take.sweepSeconds}
          ?disabled=${busy}
          hint=${msg('Twice as long is 3 dB further above the noise.')}
          @ll-number=${(event: CustomEvent<number>) =>
            this.set(msg('Set sweep length'), { sweepSeconds: event.detail })}
        ></ll-number>
        <ll-number
          label=${msg('Sweeps averaged')}
          min="1"
          max="8"
          .value=${take.averages}
          ?disabled=${busy}
          hint=${msg('Against noise that comes and goes; each repeats the whole sweep.')}
          @ll-number=${(event: CustomEvent<number>) =>
            this.set(msg('Set averages'), { averages: Math.round(event.detail) })}
        ></ll-number>
        <ll-number
          label=${msg('Pause between speakers')}
          unit="s"
          min="0"
          max="10"
          decimals="1"
          .value=${take.pauseSeconds}
          ?disabled=${busy}
          hint=${msg('Beside the time the room needs to fall silent.')}
          @ll-number=${(event: CustomEvent<number>) =>
            this.set(msg('Set pause'), { pauseSeconds: event.detail })}
        ></ll-number>
        <ll-check
          label=${msg('Let sweeps overlap')}
          .checked=${take.overlap}
          ?disabled=${busy}
          hint=${msg('Shortens the take: the next speaker starts before the room has fallen silent, as far as the decay found in an earlier take allows.')}
          @ll-check=${(event: CustomEvent<boolean>) =>
            this.set(msg('Set overlap'), { overlap: event.detail })}
        ></ll-check>
        <ll-number
          label=${msg('Repeats without being asked')}
          min="0"
          max="3"
          .value=${take.repeats}
          ?disabled=${busy}
          hint=${msg('Sweeps that came out damaged are played again so often.')}
          @ll-number=${(event: CustomEvent<number>) =>
            this.set(msg('Set repeats'), { repeats: Math.round(event.detail) })}
        ></ll-number>
      </div>
    </details>`;
  }
}

/** The settings in one sentence. */
export function settingsSentence(take: Settings): string {
  const times = take.averages === 1 ? msg('once') : msg(str`${take.averages} times`);
  const pause =
    take.pauseSeconds > 0
      ? msg(str`, pauses of ${numberText(take.pauseSeconds, 1)}${thinSpace}s`)
      : '';
  const overlap = take.overlap ? msg(', overlapping') : '';
  return msg(
    str`Sweeps of ${numberText(take.sweepSeconds, 1)}${thinSpace}s, ${times} each${overlap}${pause}.`,
  );
}

declare global {
  interface HTMLElementTagNameMap {
    'll-take-settings': TakeSettings;
  }
}
