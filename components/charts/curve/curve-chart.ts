import { msg, str } from '@lit/localize';
import { localeInForce } from '../../../src/locale/locale-in-force';
import { LitElement, html, nothing, svg, type PropertyValues } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { sharedStyles } from '../../theme/shared-styles';
import { ChartSize } from '../chart-size';
import { chartStyles } from '../chart-styles';
import { FrequencyCursor } from '../frequency-cursor';
import '../number-table';
import { narrowWidth } from '../response-layout';
import { responseStyles } from '../response-styles';
import { drawClip, drawCurveGrid, drawCursorLine, drawLines } from './curve-drawing';
import { layOutCurves, type CurveLayout } from './curve-layout';
import { curveNames } from './curve-names';
import { cursorSentence, keepNumbers, type CurveNumbers } from './curve-numbers';
import { curveStyles } from './curve-styles';
import type { CurveAxes, CurveTrace } from './curve-trace';

const at = (value: number): string => value.toFixed(1);

/** Lines against frequency or time, named above the plot, with a cursor and the numbers behind them. */
@customElement('ll-curve-chart')
export class CurveChart extends LitElement {
  static override styles = [sharedStyles, chartStyles, responseStyles, curveStyles];

  @property({ attribute: false }) traces: readonly CurveTrace[] = [];
  @property({ attribute: false }) axes: CurveAxes | null = null;
  /** What the chart shows, such as “Response of FL and FR”. */
  @property() label = '';

  private readonly size = new ChartSize(this);
  private drawn: { readonly key: readonly unknown[]; readonly layout: CurveLayout } | null = null;
  private numbers: CurveNumbers | null = null;
  private readonly cursor = new FrequencyCursor(this, () => {
    const layout = this.draw();
    if (!layout) return null;
    return { ...layout, hzAt: layout.valueAt, steps: this.steps(), restingHz: this.resting() };
  });

  protected override willUpdate(changed: PropertyValues): void {
    if (changed.has('traces') || changed.has('axes')) this.cursor.keepTo(this.steps());
  }

  private draw(): CurveLayout | null {
    const { traces, axes } = this;
    if (!axes) return null;
    const width = this.size.width || 640;
    const key = [localeInForce(), traces, axes, width];
    if (!this.drawn || !key.every((value, n) => value === this.drawn?.key[n])) {
      this.drawn = { key, layout: layOutCurves(traces, axes, width) };
    }
    return this.drawn.layout;
  }

  /** The cursor stops at the points of the first trace that are on the axis. */
  private steps(): number[] {
    const { axes } = this;
    if (!axes) return [];
    return (this.traces[0]?.x ?? []).filter((x) => x >= axes.x.low && x <= axes.x.high);
  }

  private resting(): number {
    const steps = this.steps();
    return steps[Math.floor(steps.length / 3)] ?? 1;
  }

  override render() {
    const { traces, axes, label } = this;
    const layout = this.draw();
    if (!axes || !layout || traces.length === 0) {
      return html`<p class="soft">${msg('Nothing to draw yet.')}</p>`;
    }
    this.numbers = keepNumbers(this.numbers, traces, axes);
    return html`<figure class=${layout.width < narrowWidth ? 'narrow' : ''} aria-label=${label}>
      ${curveNames(traces, axes, this.cursor.hz)}
      <div class="frame" style="height:${layout.height}px">
        <svg width=${layout.width} height=${layout.height} aria-hidden="true">
          ${this.picture(layout, axes)}
        </svg>
        ${this.cursor.plane(msg(str`Cursor over: ${label}`), (x) => cursorSentence(traces, axes, x))}
      </div>
      <ll-number-table .caption=${label} .numbers=${this.numbers}></ll-number-table>
    </figure>`;
  }

  private picture(layout: CurveLayout, axes: CurveAxes) {
    const { hz } = this.cursor;
    const { xAt, yAt } = layout;
    return svg`
      ${drawClip(layout)} ${drawCurveGrid(layout, axes)} ${drawLines(layout)}
      ${
        hz === null ? nothing : svg`${drawCursorLine(layout, hz)} ${this.dots(hz, axes, yAt, xAt)}`
      }`;
  }

  private dots(
    hz: number,
    axes: CurveAxes,
    yAt: (y: number) => number,
    xAt: (x: number) => number,
  ) {
    return this.traces.map(({ colour, x, y }) => {
      const value = y[x.indexOf(hz)];
      return typeof value !== 'number' || value < axes.y.low || value > axes.y.high
        ? nothing
        : svg`<circle class="cursor-dot" cx=${at(xAt(hz))} cy=${at(yAt(value))} r="4" fill=${colour}></circle>`;
    });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-curve-chart': CurveChart;
  }
}
