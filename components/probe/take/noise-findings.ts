import { msg } from '@lit/localize';
import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { LaterElement } from '../../later-element';
import { trustedMarginDb } from '../../../src/reading/noise-floor-margins';
import type { ChannelReading, Readings } from '../../../src/reading/reading';
import { numberText, trimmedText } from '../../../src/locale/number-text';
import { sharedStyles } from '../../theme/shared-styles';
import { findingsStyles } from './findings-styles';
import { hiddenBandsWords, nominalHz, noiseFloorWords } from './noise-words';

/** The room's noise and what of each speaker stands over it, band by band. */
@customElement('ll-noise-findings')
export class NoiseFindings extends LaterElement {
  static override styles = [
    sharedStyles,
    findingsStyles,
    css`
      .under {
        color: var(--signal);
        text-decoration: underline;
        text-underline-offset: 0.2em;
      }
    `,
  ];

  @property({ attribute: false }) readings: Readings | null = null;
  /** Sound level that reads 0 dB re full scale, dB re 20 µPa; null when it is not calibrated. */
  @property({ attribute: false }) offsetDb: number | null = null;

  override willUpdate(): void {
    const { readings } = this;
    const known = readings?.channels.some(({ margins }) => margins) ?? false;
    this.hidden = !known && readings?.capture.noise !== null;
  }

  override render() {
    const { readings } = this;
    const read = readings?.channels.filter(({ margins }) => margins) ?? [];
    if (!readings || this.hidden) return nothing;
    return html`<section class="sheet" aria-labelledby="noise">
      <h2 id="noise">${msg('Noise, and what stands over it')}</h2>
      <p>
        ${noiseFloorWords(readings.capture, this.offsetDb)}
        ${read.length === 0 ? nothing : hiddenBandsWords(read)}
      </p>
      ${
        read.length === 0
          ? nothing
          : html`<details>
              <summary>${msg('Signal over noise in octave bands')}</summary>
              ${table(read)}
            </details>`
      }
    </section>`;
  }
}

function table(channels: readonly ChannelReading[]) {
  const bands = [
    ...new Set(channels.flatMap(({ margins }) => margins?.hz.map(nominalHz) ?? [])),
  ].sort((a, b) => a - b);
  return html`<div class="scroll" tabindex="0" role="region" aria-label=${msg('Signal over noise')}>
    <table class="num">
      <thead>
        <tr>
          <th scope="col">dB</th>
          ${bands.map((hz) => html`<th scope="col">${bandHead(hz)}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${channels.map(
          ({ channel, margins }) =>
            html`<tr>
              <th scope="row">${channel}</th>
              ${bands.map((hz) => {
                const at = margins?.hz.findIndex((one) => nominalHz(one) === hz) ?? -1;
                const db = margins?.marginDb[at];
                if (db === undefined) return html`<td></td>`;
                return html`<td class=${db < trustedMarginDb ? 'under' : ''}>
                  ${numberText(db)}
                </td>`;
              })}
            </tr>`,
        )}
      </tbody>
    </table>
  </div>`;
}

/** Short enough for a column: 31.5, 125, 1k. */
function bandHead(hz: number): string {
  return hz >= 1000 ? `${trimmedText(hz / 1000, 1)}k` : trimmedText(hz, 1);
}

declare global {
  interface HTMLElementTagNameMap {
    'll-noise-findings': NoiseFindings;
  }
}
