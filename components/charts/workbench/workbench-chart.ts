import { msg, str } from '@lit/localize';
import { localeInForce } from '../../../src/locale/locale-in-force';
import { LitElement, html, nothing, svg, type PropertyValues } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { sharedStyles } from '../../theme/shared-styles';
import { ChartSize } from '../chart-size';
import { chartStyles } from '../chart-styles';
import { bandPath } from '../curve-path';
import { drawClip, drawCurveGrid, drawCursorLine, drawLines } from '../curve/curve-drawing';
import { layOutCurves, type CurveLayout } from '../curve/curve-layout';
import { curveNames } from '../curve/curve-names';
import { cursorSentence, keepNumbers, type CurveNumbers } from '../curve/curve-numbers';
import { curveStyles } from '../curve/curve-styles';
import type { CurveAxes, CurveTrace } from '../curve/curve-trace';
import { FrequencyCursor } from '../frequency-cursor';
import '../number-table';
import { narrowWidth } from '../response-layout';
import { responseStyles } from '../response-styles';
import type { ChartHandle } from './chart-handle';
import { drawHandle, handleRoom } from './handle-drawing';
import { HandleDrag } from './handle-slider';
import type { CurveBand } from './workbench-trace';
import { workbenchStyles } from './workbench-styles';

/**
 * Curves against frequency with handles to move: a line each that follows pointer and arrow keys in
 * steps. Fires `ll-move`.
 */
@customElement('ll-workbench-chart')
export class WorkbenchChart extends LitElement {
  static override styles = [
    sharedStyles,
    chartStyles,
    responseStyles,
    curveStyles,
    workbenchStyles,
  ];

  /** The first trace lies on top and gives the cursor its stops. */
  @property({ attribute: false }) traces: readonly CurveTrace[] = [];
  @property({ attribute: false }) bands: readonly CurveBand[] = [];
  @property({ attribute: false }) handles: readonly ChartHandle[] = [];
  @property({ attribute: false }) axes: CurveAxes | null = null;
  /** What the chart shows. */
  @property() label = '';

  private readonly size = new ChartSize(this);
  private drawn: { readonly key: readonly unknown[]; readonly layout: CurveLayout } | null = null;
  private numbers: CurveNumbers | null = null;
  private face: string | null = null;
  private readonly drag = new HandleDrag((detail) => {
    this.dispatchEvent(new CustomEvent('ll-move', { detail, bubbles: true, composed: true }));
  });
  private readonly cursor = new FrequencyCursor(this, () => {
    const layout = this.draw();
    if (!layout) return null;
    const restingHz = this.handles[0]?.hz ?? 80;
    return { ...layout, hzAt: layout.valueAt, steps: this.steps(), restingHz, perOctave: 48 };
  });

  /** While a handle is held the chart follows at once; else it draws in a task of its own. */
  protected override async scheduleUpdate(): Promise<void> {
    if (!this.drag.holds) await new Promise((resolve) => setTimeout(resolve));
    await super.scheduleUpdate();
  }

  protected override willUpdate(changed: PropertyValues): void {
    if (changed.has('axes')) this.cursor.keepTo(this.steps());
  }

  protected override firstUpdated(): void {
    void document.fonts.ready.then(() => this.requestUpdate());
  }

  private draw(): CurveLayout | null {
    const { traces, axes } = this;
    if (!axes) return null;
    const width = this.size.width || 640;
    const key = [localeInForce(), traces, axes, width];
    if (!this.drawn || !key.every((value, n) => value === this.drawn?.key[n])) {
      this.drawn = { key, layout: layOutCurves(traces, axes, width, handleRoom) };
    }
    return this.drawn.layout;
  }

  private steps(): number[] {
    const { low = 0, high = 0 } = this.axes?.x ?? {};
    return (this.traces[0]?.x ?? []).filter((hz) => hz >= low && hz <= high);
  }

  /** The table stands still while a handle is held: nobody reads it then. */
  private table(axes: CurveAxes): CurveNumbers {
    if (this.numbers && this.drag.holds) return this.numbers;
    this.numbers = keepNumbers(this.numbers, this.traces, axes);
    return this.numbers;
  }

  override render() {
    const { traces, axes, label, handles } = this;
    const layout = this.draw();
    if (!axes || !layout || traces.length === 0) {
      return html`<p class="soft">${msg('Nothing to draw yet.')}</p>`;
    }
    const table = this.table(axes);
    return html`<figure class=${layout.width < narrowWidth ? 'narrow' : ''} aria-label=${label}>
      ${curveNames(traces, axes, this.cursor.hz)}
      <div class="frame" style="height:${layout.height}px">
        <svg width=${layout.width} height=${layout.height} aria-hidden="true">
          ${this.picture(layout, axes)}
        </svg>
        ${this.cursor.plane(msg(str`Cursor over: ${label}`), (hz) => cursorSentence(traces, axes, hz))}
        ${handles.map((handle) => this.drag.slider(handle, layout))}
      </div>
      <ll-number-table .caption=${label} .numbers=${table}></ll-number-table>
    </figure>`;
  }

  private picture(layout: CurveLayout, axes: CurveAxes) {
    const { hz } = this.cursor;
    const { xAt, yAt } = layout;
    // Asked once: it makes the browser work out the styles of all that was just drawn.
    this.face ??= getComputedStyle(this).fontFamily || 'sans-serif';
    const font = `700 12.5px ${this.face}`;
    return svg`
      ${drawClip(layout)} ${drawCurveGrid(layout, axes)}
      <g clip-path="url(#plot)">
        ${this.bands.map(
          ({ x, low, high, colour }) =>
            svg`<path class="fit-band" fill=${colour} d=${bandPath(x, low, high, { x: xAt, y: yAt })}></path>`,
        )}
      </g>
      ${drawLines(layout)}
      ${this.handles.map((handle) => drawHandle(handle, layout, font))}
      ${hz === null ? nothing : drawCursorLine(layout, hz)}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-workbench-chart': WorkbenchChart;
  }
}
