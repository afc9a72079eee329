import { LitElement, html, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { sharedStyles } from '../theme/shared-styles';
import { ChartSize } from './chart-size';
import { chartStyles } from './chart-styles';
import { nearestStep, stepCursor } from './cursor-steps';
import { frequencyRanges, type FrequencyRange } from './frequency-axis';
import { dbText, hzText, intervalText } from './number-text';
import './number-table';
import { drawCursor, drawResponse } from './response-drawing';
import { labelResponse, type ChartLabel } from './response-labels';
import {
  layOutResponse,
  narrowWidth,
  type ResponseInput,
  type ResponseLayout,
} from './response-layout';
import {
  cursorSteps,
  readoutSentence,
  readResponse,
  responseCopy,
  responseTable,
} from './response-numbers';
import { responseStyles } from './response-styles';
import type { ResponseTrace } from './response-trace';

interface Drawn {
  readonly key: readonly unknown[];
  readonly input: ResponseInput;
  readonly layout: ResponseLayout;
  readonly labels: readonly ChartLabel[];
  readonly steps: readonly number[];
  readonly table: { readonly head: string[]; readonly rows: string[][] };
  readonly copyText: string;
}

/** Response of a speaker and its partners with noise, fit, roll-off marks, crossover and cursor. */
@customElement('ll-response-chart')
export class ResponseChart extends LitElement {
  static override styles = [sharedStyles, chartStyles, responseStyles];

  /** The first trace is the one examined: it alone shows noise, fit and marks. */
  @property({ attribute: false }) traces: readonly ResponseTrace[] = [];
  @property({ attribute: false }) crossoverHz: number | null = null;
  @property({ attribute: false }) proposedHz: number | null = null;
  @property() range: FrequencyRange = 'low';

  @state() private cursorHz: number | null = null;

  private readonly size = new ChartSize(this);
  private drawn: Drawn | null = null;

  protected override firstUpdated(): void {
    // Labels are set by the width of their text: set them again once the page's face has loaded.
    void document.fonts.ready.then(() => {
      this.drawn = null;
      this.requestUpdate();
    });
  }

  protected override willUpdate(changed: PropertyValues): void {
    const drawn = this.draw();
    if (changed.has('traces') || changed.has('range')) {
      const kept = this.cursorHz !== null && drawn.steps.includes(this.cursorHz);
      if (!kept) this.cursorHz = null;
    }
  }

  private draw(): Drawn {
    const { traces, crossoverHz, proposedHz, range } = this;
    const width = this.size.width || 640;
    const key = [traces, crossoverHz, proposedHz, range, width];
    const old = this.drawn;
    if (old && key.every((value, i) => value === old.key[i])) return old;
    const input = { traces, crossoverHz, proposedHz, range, width };
    const layout = layOutResponse(input);
    this.drawn = {
      key,
      input,
      layout,
      labels: labelResponse(input, layout, getComputedStyle(this).fontFamily || 'sans-serif'),
      steps: cursorSteps(traces, ...frequencyRanges[range]),
      table: responseTable(traces),
      copyText: responseCopy(traces),
    };
    return this.drawn;
  }

  private point(event: PointerEvent): void {
    const { layout, steps } = this.draw();
    const bounds = (event.currentTarget as HTMLElement).getBoundingClientRect();
    this.cursorHz = nearestStep(steps, layout.hzAt(layout.plot.left + event.clientX - bounds.left));
  }

  private leave(event: PointerEvent): void {
    if (!(event.currentTarget as HTMLElement).matches(':focus')) this.cursorHz = null;
  }

  private press(event: KeyboardEvent): void {
    const { steps } = this.draw();
    const start = this.cursorHz ?? nearestStep(steps, this.restingHz());
    const hz = stepCursor(steps, start, event.key, event.shiftKey);
    if (hz === null) return;
    event.preventDefault();
    this.cursorHz = hz;
  }

  /** Where the cursor stands before it is moved: at the crossover, else at the roll-off. */
  private restingHz(): number {
    return this.crossoverHz ?? this.traces[0]?.marks[0]?.hz ?? 80;
  }

  override render() {
    const { input, layout, labels, table, copyText } = this.draw();
    if (input.traces.length === 0) return html`<p class="soft">No response to draw yet.</p>`;
    const names = input.traces.map(({ channel }) => channel).join(' and ');
    return html`<figure
      class=${layout.width < narrowWidth ? 'narrow' : ''}
      aria-label="Response of ${names}"
    >
      <div class="bar">${this.readout()} ${this.ranges()}</div>
      <div class="frame" style="height:${layout.height}px">
        <svg width=${layout.width} height=${layout.height} aria-hidden="true">
          ${drawResponse(input, layout, labels)} ${drawCursor(input, layout, this.cursorHz)}
        </svg>
        ${this.plane(names, layout)}
      </div>
      ${layout.width < narrowWidth ? this.marks() : nothing}
      <ll-number-table
        .caption=${`Response of ${names}, every third of an octave`}
        .head=${table.head}
        .rows=${table.rows}
        .copyText=${copyText}
      ></ll-number-table>
    </figure>`;
  }

  private readout() {
    if (this.cursorHz === null) {
      return html`<div class="readout soft">Point at the chart, or use the arrow keys on it.</div>`;
    }
    const { hz, values } = readResponse(this.traces, this.cursorHz);
    return html`<div class="readout num" aria-hidden="true">
      <b>${hzText(hz)}</b>${values.map(
        ({ name, text }) => html`<span><span class="soft">${name}</span> ${text}</span>`,
      )}
    </div>`;
  }

  /** What the marks' labels say where there is room for them. */
  private marks() {
    const marks = this.traces[0]?.marks ?? [];
    return html`<p class="marks small num">
      ${marks.map(
        ({ downDb, hz, lowHz, highHz }) =>
          html`<span
            >${dbText(-downDb, 0)} at ${hzText(hz)},
            <span class="soft">${intervalText([lowHz, highHz])}</span></span
          >`,
      )}
    </p>`;
  }

  private ranges() {
    const button = (range: FrequencyRange, text: string) =>
      html`<button
        type="button"
        aria-pressed=${this.range === range ? 'true' : 'false'}
        @click=${() => {
          this.range = range;
        }}
      >
        ${text}
      </button>`;
    return html`<div class="range" role="group" aria-label="Frequencies shown">
      ${button('low', 'Low end')}${button('full', 'Whole range')}
    </div>`;
  }

  private plane(names: string, { plot, hzAt }: ResponseLayout) {
    const hz = this.cursorHz ?? this.restingHz();
    const bounds = [hzAt(plot.left), hzAt(plot.right)].map((edge) => Math.round(edge));
    return html`<div
      class="cursor"
      role="slider"
      tabindex="0"
      style="left:${plot.left}px;top:${plot.top}px;width:${plot.right - plot.left}px;height:${
        plot.bottom - plot.top
      }px"
      aria-label="Cursor over the response of ${names}"
      aria-valuemin=${bounds[0] ?? nothing}
      aria-valuemax=${bounds[1] ?? nothing}
      aria-valuenow=${Math.round(hz)}
      aria-valuetext=${readoutSentence(readResponse(this.traces, hz))}
      @pointermove=${(event: PointerEvent) => this.point(event)}
      @pointerdown=${(event: PointerEvent) => this.point(event)}
      @pointerleave=${(event: PointerEvent) => this.leave(event)}
      @focus=${() => {
        this.cursorHz ??= nearestStep(this.draw().steps, this.restingHz());
      }}
      @blur=${() => {
        this.cursorHz = null;
      }}
      @keydown=${(event: KeyboardEvent) => this.press(event)}
    ></div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-response-chart': ResponseChart;
  }
}
