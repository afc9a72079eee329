import { msg } from '@lit/localize';
import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Weighting } from '../../dsp/level/weighting';
import type { Bench } from '../../src/session/bench';
import type { SoundLevel } from '../../src/soundlevel/sound-level';
import { CalmElement } from '../calm-element';
import { numberText, thinSpace } from '../../src/locale/number-text';
import { sharedStyles } from '../theme/shared-styles';
import { soundLevelUnit } from './strip-words';

const weightings: readonly Weighting[] = ['A', 'C', 'Z'];
const times = ['fast', 'slow'] as const;

/** The sound level at the microphone, with its weighting and time constant to choose. */
@customElement('ll-level-reading')
export class LevelReading extends CalmElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: flex;
        align-items: center;
        gap: var(--space-2);
        white-space: nowrap;
      }

      .value {
        min-width: 5.5rem;
        text-align: right;
        font-weight: 700;
      }

      select {
        min-height: 2rem;
        padding: 0 var(--space-1);
        border: var(--line) solid var(--edge);
        border-radius: var(--radius);
        background: var(--sheet);
        color: var(--ink);
        font: inherit;
        font-size: var(--text-small);
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) level: SoundLevel | null = null;
  protected override readonly calmMilliseconds = 200;

  override render() {
    const { level, bench } = this;
    if (!level || !bench) return nothing;
    return html`<span class="value num"
        >${numberText(level.db, 1)}${thinSpace}${soundLevelUnit(level)}</span
      >
      <select
        aria-label=${msg('Frequency weighting')}
        @change=${(event: Event) => {
          const { value } = event.currentTarget as HTMLSelectElement;
          const weighting = weightings.find((one) => one === value);
          if (weighting) bench.setMeter(weighting, level.time);
        }}
      >
        ${weightings.map(
          (one) => html`<option value=${one} .selected=${one === level.weighting}>${one}</option>`,
        )}
      </select>
      <select
        aria-label=${msg('Time weighting')}
        @change=${(event: Event) => {
          const { value } = event.currentTarget as HTMLSelectElement;
          const time = times.find((one) => one === value);
          if (time) bench.setMeter(level.weighting, time);
        }}
      >
        ${times.map(
          (one) => html`<option value=${one} .selected=${one === level.time}>${one}</option>`,
        )}
      </select>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-level-reading': LevelReading;
  }
}
