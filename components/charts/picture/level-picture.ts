import { dbText, numberText } from '../../../src/locale/number-text';
import { msg } from '@lit/localize';
import { localeInForce } from '../../../src/locale/locale-in-force';
import { LitElement, css, html, svg, type PropertyValues } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { scaleLinear, scaleLog } from 'd3';
import { sharedStyles } from '../../theme/shared-styles';
import { ChartSize } from '../chart-size';
import { chartStyles } from '../chart-styles';
import { ticksBetween } from '../frequency-axis';
import '../number-table';
import type { NumbersBehind } from '../number-table';
import { chartHeight } from '../response-layout';
import type { LevelPictureData } from './level-picture-data';
import { pictureCopy, pictureTable } from './picture-numbers';

/** A picture of how levels fade: time runs upwards, louder is darker, a step of shade is a step of level. */
@customElement('ll-level-picture')
export class LevelPicture extends LitElement {
  static override styles = [
    sharedStyles,
    chartStyles,
    css`
      .frame {
        position: relative;
      }

      canvas {
        position: absolute;
        image-rendering: pixelated;
        color: var(--ink);
      }

      svg {
        position: relative;
      }

      .key {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-1) var(--space-3);
        font-size: var(--text-small);
      }

      .key span {
        display: inline-flex;
        gap: var(--space-1);
        align-items: center;
      }

      .key i {
        width: 1.4rem;
        height: 0.9rem;
        border: var(--line) solid var(--rule);
        background: var(--ink);
      }
    `,
  ];

  @property({ attribute: false }) data: LevelPictureData | null = null;
  @property() label = '';
  private readonly size = new ChartSize(this);
  private numbers: NumbersBehind | null = null;
  /** The locale they are written in. */
  private saidIn = localeInForce();

  protected override willUpdate(changed: PropertyValues<this>): void {
    const { data } = this;
    if (!changed.has('data') && this.saidIn === localeInForce()) return;
    this.saidIn = localeInForce();
    this.numbers = data && { table: () => pictureTable(data), copy: () => pictureCopy(data) };
  }

  override render() {
    const { data, label } = this;
    if (!data) return html`<p class="soft">${msg('Nothing to draw yet.')}</p>`;
    const width = this.size.width || 640;
    const height = chartHeight(width);
    const plot = { left: 46, top: 12, right: width - 14, bottom: height - 24 };
    const [low = 20, high = 300] = [data.hz[0], data.hz[data.hz.length - 1]];
    const x = scaleLog().domain([low, high]).range([plot.left, plot.right]);
    const y = scaleLinear()
      .domain([data.seconds[0] ?? 0, data.seconds[data.seconds.length - 1] ?? 1])
      .range([plot.bottom, plot.top]);
    return html`<figure aria-label=${label}>
      <div class="frame" style="height:${height}px">
        <canvas
          width=${data.hz.length}
          height=${data.seconds.length}
          style="left:${plot.left}px;top:${plot.top}px;width:${plot.right - plot.left}px;height:${
            plot.bottom - plot.top
          }px"
          role="img"
          aria-label=${label}
        ></canvas>
        <svg width=${width} height=${height} aria-hidden="true">
          ${ticksBetween(low, high, (hz) => x(hz), 32).map(
            (tick) => svg`
              <line class="grid" x1=${tick.x} x2=${tick.x} y1=${plot.bottom} y2=${plot.bottom + 4}></line>
              <text class="tick" x=${tick.x} y=${height - 7} text-anchor="middle">${tick.text}</text>`,
          )}
          ${y.ticks(6).map(
            (seconds) => svg`
              <line class="grid" x1=${plot.left - 4} x2=${plot.left} y1=${y(seconds)} y2=${y(seconds)}></line>
              <text class="tick" x=${plot.left - 6} y=${y(seconds) + 4} text-anchor="end">${numberText(seconds * 1000)}</text>`,
          )}
          <text class="tick" x=${plot.left - 10} y=${height - 7} text-anchor="end">ms, Hz</text>
        </svg>
      </div>
      <div class="key" aria-hidden="true">
        ${stepsOf(data.lowestDb).map(
          (db) =>
            html`<span
              ><i style="opacity:${shade(db, data.lowestDb)}"></i
              ><span class="num">${dbText(db, 0)}</span></span
            >`,
        )}
      </div>
      <ll-number-table .caption=${label} .numbers=${this.numbers}></ll-number-table>
    </figure>`;
  }

  protected override updated(): void {
    const canvas = this.renderRoot.querySelector('canvas');
    const { data } = this;
    if (canvas && data) paint(canvas, data);
  }
}

const stepDb = 6;

/** Shades are told apart by whole steps of 6 dB. */
function stepsOf(lowestDb: number): number[] {
  return Array.from({ length: Math.floor(-lowestDb / stepDb) }, (_, n) => -stepDb * n);
}

/** Darkness of a level, 0 … 1. */
export function shade(db: number, lowestDb: number): number {
  const step = Math.floor(Math.max(0, db - lowestDb) / stepDb) * stepDb;
  return Math.min(1, step / Math.floor(-lowestDb / stepDb) / stepDb);
}

/** One pixel a value; the first moment at the foot. */
function paint(canvas: HTMLCanvasElement, { hz, seconds, db, lowestDb }: LevelPictureData): void {
  const context = canvas.getContext('2d');
  if (!context || hz.length === 0 || seconds.length === 0) return;
  const [red = 0, green = 0, blue = 0] = channelsOf(getComputedStyle(canvas).color);
  const image = context.createImageData(hz.length, seconds.length);
  for (let row = 0; row < seconds.length; row++) {
    for (let column = 0; column < hz.length; column++) {
      const level = db[column * seconds.length + seconds.length - 1 - row] ?? lowestDb;
      const at = 4 * (row * hz.length + column);
      image.data[at] = red;
      image.data[at + 1] = green;
      image.data[at + 2] = blue;
      image.data[at + 3] = Math.round(255 * shade(level, lowestDb));
    }
  }
  context.putImageData(image, 0, 0);
}

function channelsOf(colour: string): number[] {
  return (colour.match(/[\d.]+/g) ?? []).map(Number);
}

declare global {
  interface HTMLElementTagNameMap {
    'll-level-picture': LevelPicture;
  }
}
