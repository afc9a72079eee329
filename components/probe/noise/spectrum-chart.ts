import { msg, str } from '@lit/localize';
import { css, html, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { NoiseSpectrum } from '../../../src/noise/noise-state';
import { CalmElement } from '../../calm-element';
import { ChartSize } from '../../charts/chart-size';
import { chartStyles } from '../../charts/chart-styles';
import type { FrequencyRange } from '../../charts/frequency-axis';
import { numberText } from '../../../src/locale/number-text';
import { sharedStyles } from '../../theme/shared-styles';
import './spectrum-numbers';
import { layOutSpectrum, trustedCoherence, type SpectrumLayout } from './spectrum-layout';

/** The live spectrum in bands, its noise floor and its coherence; at most ten drawings a second. */
@customElement('ll-spectrum-chart')
export class SpectrumChart extends CalmElement {
  static override styles = [
    sharedStyles,
    chartStyles,
    css`
      .doubtful {
        opacity: 0.3;
      }

      .floor {
        fill: var(--sheet);
        opacity: 0.4;
      }

      .floor-line {
        fill: none;
        stroke: var(--ink);
        stroke-width: 1.5;
        stroke-dasharray: 2 2;
      }

      .coherence {
        fill: var(--soft);
        opacity: 0.7;
      }

      .good {
        stroke: var(--ok);
        stroke-width: 1;
        stroke-dasharray: 4 3;
      }

      .key {
        display: flex;
        flex-wrap: wrap;
        gap: 0 var(--space-4);
      }
    `,
  ];

  @property({ attribute: false }) spectrum: NoiseSpectrum | null = null;
  @property({ type: Number }) bandsPerOctave = 3;
  /** CSS colour of the speaker's group. */
  @property() colour = 'var(--ink)';
  @property() channel = '';
  @property() range: FrequencyRange = 'full';

  private readonly size = new ChartSize(this);
  private lastTopDb: number | null = null;

  override render() {
    const { spectrum, bandsPerOctave, range } = this;
    if (!spectrum)
      return html`<p class="soft">${msg('The spectrum appears after two periods.')}</p>`;
    const width = this.size.width || 640;
    const layout = layOutSpectrum({
      spectrum,
      bandsPerOctave,
      range,
      width,
      lastTopDb: this.lastTopDb,
    });
    this.lastTopDb = layout.topDb;
    const caption = msg(str`Spectrum of ${this.channel} in bands`);
    return html`<figure aria-label=${caption}>
      <svg width=${layout.width} height=${layout.height} aria-hidden="true">
        ${grid(layout, spectrum.unit)} ${this.bands(layout)}
      </svg>
      <figcaption class="key soft small">
        <span>${msg('dotted: noise floor')}</span>
        ${
          layout.lane
            ? html`<span
                >${msg(str`faint: less than ${numberText(trustedCoherence, 1)} coherent or too near the noise`)}</span
              >`
            : html`<span>${msg('faint: too near the noise')}</span>`
        }
      </figcaption>
      <ll-spectrum-numbers .caption=${caption} .spectrum=${spectrum}></ll-spectrum-numbers>
    </figure>`;
  }

  private bands({ trusted, doubtful, floor, floorLine, coherence, plot, lane }: SpectrumLayout) {
    const good = lane ? lane.bottom - trustedCoherence * (lane.bottom - lane.top) : 0;
    return svg`
      <path class="doubtful" fill=${this.colour} d=${doubtful}></path>
      <path class="trusted" fill=${this.colour} d=${trusted}></path>
      <path class="floor" d=${floor}></path>
      <path class="floor-line" d=${floorLine}></path>
      ${
        lane
          ? svg`<path class="coherence" d=${coherence}></path>
            <line class="good" x1=${plot.left} x2=${plot.right} y1=${good} y2=${good}></line>
            <text class="tick" x=${plot.left - 6} y=${lane.top + 9} text-anchor="end">1</text>
            <text class="tick" x=${plot.left - 6} y=${lane.bottom} text-anchor="end">0</text>
            <text class="halo tick" x=${plot.left + 6} y=${(lane.top + lane.bottom) / 2 + 5}>${msg('coherence')}</text>`
          : nothing
      }`;
  }
}

function grid({ plot, lane, levels, frequencies, height }: SpectrumLayout, unit: string) {
  return svg`
    ${levels.map(
      ({ db, y }) => svg`
        <line class="grid" x1=${plot.left} x2=${plot.right} y1=${y} y2=${y}></line>
        <text class="tick" x=${plot.left - 6} y=${y + 4} text-anchor="end">${numberText(db)}</text>`,
    )}
    ${frequencies.map(
      ({ x, text }) => svg`
        <line class="grid" x1=${x} x2=${x} y1=${plot.top} y2=${lane?.bottom ?? plot.bottom}></line>
        <text class="tick" x=${x} y=${height - 7} text-anchor="middle">${text}</text>`,
    )}
    <text class="tick" x="0" y="10">${unit}</text>
    <text class="tick" x=${plot.left - 6} y=${height - 7} text-anchor="end">Hz</text>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-spectrum-chart': SpectrumChart;
  }
}
