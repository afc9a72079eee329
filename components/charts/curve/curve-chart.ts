import { LitElement, css, html, nothing, svg, type PropertyValues } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { sharedStyles } from '../../theme/shared-styles';
import { ChartSize } from '../chart-size';
import { chartStyles } from '../chart-styles';
import { FrequencyCursor } from '../frequency-cursor';
import '../number-table';
import { narrowWidth } from '../response-layout';
import { responseStyles } from '../response-styles';
import { layOutCurves, type CurveLayout } from './curve-layout';
import { curveCopy, curveTable, placeText, valuesAt } from './curve-numbers';
import type { CurveAxes, CurveTrace } from './curve-trace';

const at = (value: number): string => value.toFixed(1);

/** Lines against frequency or time, named above the plot, with a cursor and the numbers behind them. */
@customElement('ll-curve-chart')
export class CurveChart extends LitElement {
  static override styles = [
    sharedStyles,
    chartStyles,
    responseStyles,
    css`
      .names {
        display: flex;
        flex-wrap: wrap;
        gap: 0 var(--space-4);
        min-height: 1.6em;
        font-size: var(--text-small);
      }

      .names span {
        display: inline-flex;
        gap: var(--space-1);
        align-items: center;
        white-space: nowrap;
      }

      .names svg {
        width: 1.6rem;
        height: 0.6rem;
      }

      .trace {
        fill: none;
        stroke-width: 1.8;
        stroke-linejoin: round;
      }

      .dashed {
        stroke-dasharray: 7 4;
      }

      .dotted {
        stroke-dasharray: 1.5 4;
        stroke-linecap: round;
      }
    `,
  ];

  @property({ attribute: false }) traces: readonly CurveTrace[] = [];
  @property({ attribute: false }) axes: CurveAxes | null = null;
  /** What the chart shows, such as “Response of FL and FR”. */
  @property() label = '';

  private readonly size = new ChartSize(this);
  private drawn: { readonly key: readonly unknown[]; readonly layout: CurveLayout } | null = null;
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
    const key = [traces, axes, width];
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
      return html`<p class="soft">Nothing to draw yet.</p>`;
    }
    const table = curveTable(traces, axes);
    return html`<figure class=${layout.width < narrowWidth ? 'narrow' : ''} aria-label=${label}>
      ${this.names(axes)}
      <div class="frame" style="height:${layout.height}px">
        <svg width=${layout.width} height=${layout.height} aria-hidden="true">
          ${this.picture(layout, axes)}
        </svg>
        ${this.cursor.plane(`Cursor over: ${label}`, (x) => {
          const said = valuesAt(traces, axes, x).map(({ name, text }) => `${name} ${text}`);
          return `${placeText(axes, x)}: ${said.join(', ')}`;
        })}
      </div>
      <ll-number-table
        .caption=${label}
        .head=${table.head}
        .rows=${table.rows}
        .copyText=${curveCopy(traces, axes)}
      ></ll-number-table>
    </figure>`;
  }

  /** The lines' names, and what the cursor reads of each. */
  private names(axes: CurveAxes) {
    const { hz } = this.cursor;
    const values = hz === null ? null : valuesAt(this.traces, axes, hz);
    return html`<div class="names" aria-hidden="true">
      ${this.traces.map(
        ({ name, colour, stroke }, n) =>
          html`<span>
            <svg>
              <path class="trace ${stroke}" stroke=${colour} d="M0 5H26"></path>
            </svg>
            ${name} ${values ? html`<b class="num">${values[n]?.text}</b>` : nothing}
          </span>`,
      )}
      ${hz === null ? nothing : html`<span class="num">at ${placeText(axes, hz)}</span>`}
    </div>`;
  }

  private picture({ plot, columns, rows, lines, height, xAt, yAt }: CurveLayout, axes: CurveAxes) {
    const { hz } = this.cursor;
    return svg`
      <defs><clipPath id="plot"><rect x=${plot.left} y=${plot.top}
        width=${at(plot.right - plot.left)} height=${plot.bottom - plot.top}></rect></clipPath></defs>
      ${rows.map(
        ({ text, y }) => svg`
          <line class="grid" x1=${plot.left} x2=${at(plot.right)} y1=${at(y)} y2=${at(y)}></line>
          <text class="tick" x=${plot.left - 6} y=${at(y + 4)} text-anchor="end">${text}</text>`,
      )}
      ${columns.map(
        ({ x, text }) => svg`
          <line class="grid" x1=${at(x)} x2=${at(x)} y1=${plot.top} y2=${plot.bottom}></line>
          <text class="tick" x=${at(x)} y=${height - 7} text-anchor="middle">${text}</text>`,
      )}
      <text class="tick" x=${plot.left - 6} y="11" text-anchor="end">${axes.y.unit}</text>
      <text class="tick" x=${plot.left - 10} y=${height - 7} text-anchor="end">${
        axes.x.kind === 'frequency' ? 'Hz' : 'ms'
      }</text>
      <g clip-path="url(#plot)">
        ${lines
          .toReversed()
          .map(
            ({ trace, path }) =>
              svg`<path class="trace ${trace.stroke}" stroke=${trace.colour} d=${path}></path>`,
          )}
      </g>
      ${
        hz === null
          ? nothing
          : svg`<line class="cursor-line" x1=${at(xAt(hz))} x2=${at(xAt(hz))}
              y1=${plot.top} y2=${plot.bottom}></line>
            ${this.dots(hz, axes, yAt, xAt)}`
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
