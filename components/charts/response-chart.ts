import { msg, str } from '@lit/localize';
import { listInWords } from '../../src/system/list-in-words';
import { localeInForce } from '../../src/locale/locale-in-force';
import { LitElement, html, nothing, type PropertyValues } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { sharedStyles } from '../theme/shared-styles';
import { ChartSize } from './chart-size';
import { chartStyles } from './chart-styles';
import { frequencyRanges, type FrequencyRange } from './frequency-axis';
import { FrequencyCursor } from './frequency-cursor';
import { dbText, hzText, intervalText } from '../../src/locale/number-text';
import './number-table';
import type { NumbersBehind } from './number-table';
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
  readonly numbers: NumbersBehind;
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

  private readonly size = new ChartSize(this);
  private drawn: Drawn | null = null;
  private readonly cursor = new FrequencyCursor(this, () => {
    const { layout, steps } = this.draw();
    return { ...layout, steps, restingHz: this.restingHz() };
  });

  protected override firstUpdated(): void {
    // Labels are set by the width of their text: set them again once the page's face has loaded.
    void document.fonts.ready.then(() => {
      this.drawn = null;
      this.requestUpdate();
    });
  }

  protected override willUpdate(changed: PropertyValues): void {
    const drawn = this.draw();
    if (changed.has('traces') || changed.has('range')) this.cursor.keepTo(drawn.steps);
  }

  private draw(): Drawn {
    const { traces, crossoverHz, proposedHz, range } = this;
    const width = this.size.width || 640;
    const key = [localeInForce(), traces, crossoverHz, proposedHz, range, width];
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
      numbers: { table: () => responseTable(traces), copy: () => responseCopy(traces) },
    };
    return this.drawn;
  }

  /** Where the cursor stands before it is moved: at the crossover, else at the roll-off. */
  private restingHz(): number {
    return this.crossoverHz ?? this.traces[0]?.marks[0]?.hz ?? 80;
  }

  override render() {
    const { input, layout, labels, numbers } = this.draw();
    if (input.traces.length === 0)
      return html`<p class="soft">${msg('No response to draw yet.')}</p>`;
    const names = listInWords(input.traces.map(({ channel }) => channel));
    return html`<figure
      class=${layout.width < narrowWidth ? 'narrow' : ''}
      aria-label=${msg(str`Response of ${names}`)}
    >
      <div class="bar">${this.readout()} ${this.ranges()}</div>
      <div class="frame" style="height:${layout.height}px">
        <svg width=${layout.width} height=${layout.height} aria-hidden="true">
          ${drawResponse(input, layout, labels)} ${drawCursor(input, layout, this.cursor.hz)}
        </svg>
        ${this.cursor.plane(msg(str`Cursor over the response of ${names}`), (hz) =>
          readoutSentence(readResponse(this.traces, hz)),
        )}
      </div>
      ${layout.width < narrowWidth ? this.marks() : nothing}
      <ll-number-table
        .caption=${msg(str`Response of ${names}, every third of an octave`)}
        .numbers=${numbers}
      ></ll-number-table>
    </figure>`;
  }

  private readout() {
    if (this.cursor.hz === null) {
      return html`<div class="readout soft">
        ${msg('Point at the chart, or use the arrow keys on it.')}
      </div>`;
    }
    const { hz, values } = readResponse(this.traces, this.cursor.hz);
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
            >${msg(html`${dbText(-downDb, 0)} at ${hzText(hz)}, <span class="soft">${intervalText([lowHz, highHz])}</span>`)}</span
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
    return html`<div class="range" role="group" aria-label=${msg('Frequencies shown')}>
      ${button('low', msg('Low end'))}${button('full', msg('Whole range'))}
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-response-chart': ResponseChart;
  }
}
