import { msg } from '@lit/localize';
import { LitElement, css, html, nothing, svg, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { MicLevel } from '../../src/rig/port';
import { numberText, thinSpace } from '../../src/locale/number-text';
import { sharedStyles } from '../theme/shared-styles';

const floorDb = -72;

/** How long the highest peak stays in sight, milliseconds. */
const holdMilliseconds = 2000;

/**
 * The microphone's level: a bar for its mean, a tick that holds its highest peak of the last two
 * seconds, signal colour when it clips.
 */
@customElement('ll-mic-meter')
export class MicMeter extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: flex;
        align-items: center;
        gap: var(--space-3);
        min-width: 0;
      }

      svg {
        flex: 1 1 6rem;
        width: 6rem;
        min-width: 3rem;
        height: 1.25rem;
      }

      .track {
        fill: var(--track);
      }

      .mean {
        fill: var(--ok);
      }

      .peak {
        fill: var(--ink);
      }

      .limit {
        fill: var(--signal);
      }

      .level {
        flex: none;
        min-width: 6.7rem;
        white-space: nowrap;
      }
    `,
  ];

  @property({ attribute: false }) level: MicLevel | null = null;

  private held = { peakDb: -Infinity, until: 0 };

  /** The highest peak of late; none while nothing listens. */
  private hold(now: number): number {
    const { level } = this;
    if (!level) this.held = { peakDb: -Infinity, until: 0 };
    else if (level.peakDb >= this.held.peakDb || now > this.held.until) {
      this.held = { peakDb: level.peakDb, until: now + holdMilliseconds };
    }
    return this.held.peakDb;
  }

  protected override render(): TemplateResult {
    const { level } = this;
    const peakDb = this.hold(performance.now());
    const words = level ? `${numberText(level.rmsDb, 1)}${thinSpace}dBFS` : msg('not listening');
    return html`<b>${msg('Mic')}</b>
      <svg viewBox="0 0 100 20" preserveAspectRatio="none" aria-hidden="true">
        <rect class="track" y="5" width="100" height="10"></rect>
        ${
          level
            ? svg`<rect class=${level.clipped ? 'limit' : 'mean'} y="5" width=${along(level.rmsDb)} height="10"></rect>
              <rect class="peak" x=${along(peakDb) - 0.5} y="2" width="1" height="16"></rect>`
            : nothing
        }
        <rect class="limit" x=${along(-3)} y="2" width="0.8" height="16"></rect>
      </svg>
      <span class="level ${level?.clipped ? 'signal' : level ? 'num' : 'soft'}"
        >${level?.clipped ? msg('clipped') : words}</span
      >`;
  }
}

/** Where a level lies along the bar, 0 to 100. */
function along(db: number): number {
  return Math.round(Math.min(100, Math.max(0, (1 - db / floorDb) * 100)) * 10) / 10;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-mic-meter': MicMeter;
  }
}
