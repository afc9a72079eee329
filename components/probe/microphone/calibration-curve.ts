import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { MicrophoneCalibration } from '../../../src/microphone/calibration';
import { ChartSize } from '../../charts/chart-size';
import { chartStyles } from '../../charts/chart-styles';
import { keepNumbers, type CurveNumbers } from '../../charts/curve/curve-numbers';
import type { CurveAxes, CurveTrace } from '../../charts/curve/curve-trace';
import { curvePath } from '../../charts/curve-path';
import { frequencyScale, frequencyTicks, levelTicks } from '../../charts/frequency-axis';
import { isNumber, signedText } from '../../../src/locale/number-text';
import '../../charts/number-table';
import { sharedStyles } from '../../theme/shared-styles';
import { scaleLinear } from 'd3';

const height = 150;
/** How the numbers behind it are written. */
const axes: CurveAxes = {
  x: { kind: 'frequency', low: 20, high: 20_000 },
  y: { unit: 'dB', digits: 1, low: -6, high: 6 },
};
const plot = { left: 34, top: 12, bottom: height - 24 };

/** A microphone's own response, small: what is taken out of every reading. */
@customElement('ll-calibration-curve')
export class CalibrationCurve extends LitElement {
  static override styles = [
    sharedStyles,
    chartStyles,
    css`
      .curve {
        fill: none;
        stroke: var(--ink);
        stroke-width: 2;
        stroke-linejoin: round;
      }
    `,
  ];

  @property({ attribute: false }) calibration: MicrophoneCalibration | null = null;
  private readonly size = new ChartSize(this);
  private kept: CurveNumbers | null = null;

  override render() {
    const { calibration } = this;
    if (!calibration) return nothing;
    const width = this.size.width || 360;
    const right = Math.max(plot.left + 60, width - 12);
    const x = frequencyScale('full', plot.left, right);
    const values = calibration.db.filter(isNumber);
    const reach = Math.max(6, Math.ceil(Math.max(...values.map(Math.abs)) / 6) * 6);
    const y = scaleLinear().domain([-reach, reach]).range([plot.bottom, plot.top]);
    const path = curvePath(calibration.hz, calibration.db, { x: (hz) => x(hz), y: (db) => y(db) });
    const caption = msg(str`Response of the microphone by ${calibration.name}`);
    return html`<figure aria-label=${caption}>
      <svg width=${width} height=${height} aria-hidden="true">
        <defs>
          <clipPath id="plot">
            <rect
              x=${plot.left}
              y=${plot.top}
              width=${right - plot.left}
              height=${plot.bottom - plot.top}
            ></rect>
          </clipPath>
        </defs>
        ${levelTicks(y).map(
          (db) => svg`
            <line class="grid" x1=${plot.left} x2=${right} y1=${y(db)} y2=${y(db)}></line>
            <text class="tick" x=${plot.left - 6} y=${y(db) + 4} text-anchor="end">${signedText(db)}</text>`,
        )}
        ${frequencyTicks('full', (hz) => x(hz), 34).map(
          ({ x: at, text }) => svg`
            <line class="grid" x1=${at} x2=${at} y1=${plot.top} y2=${plot.bottom}></line>
            <text class="tick" x=${at} y=${height - 7} text-anchor="middle">${text}</text>`,
        )}
        <text class="tick" x=${plot.left - 6} y=${height - 7} text-anchor="end">Hz</text>
        <path class="curve" clip-path="url(#plot)" d=${path}></path>
      </svg>
      <ll-number-table .caption=${caption} .numbers=${this.numbers(calibration)}></ll-number-table>
    </figure>`;
  }

  private numbers({ name, hz, db }: MicrophoneCalibration): CurveNumbers {
    if (this.kept?.traces[0]?.x === hz) return this.kept;
    const trace: CurveTrace = { name, colour: 'var(--ink)', stroke: 'solid', x: hz, y: db };
    this.kept = keepNumbers(null, [trace], axes);
    return this.kept;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-calibration-curve': CalibrationCurve;
  }
}
