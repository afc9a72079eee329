import { msg, str } from '@lit/localize';
import { localeInForce } from '../../src/locale/locale-in-force';
import { LitElement, html, type PropertyValues } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { atSameFrequency } from '../../dsp/distortion/at-same-frequency';
import type { DistortionReading } from '../../src/reading/reading';
import { sharedStyles } from '../theme/shared-styles';
import { ChartSize } from './chart-size';
import { chartStyles } from './chart-styles';
import { nearestStep } from './cursor-steps';
import {
  hiddenStretches,
  hiddenWords,
  type DistortionCurves,
  type DistortionUnit,
} from './distortion-curves';
import { distortionStyles, drawDistortion, drawDistortionCursor } from './distortion-drawing';
import { labelDistortion } from './distortion-labels';
import { layOutDistortion, type DistortionInput, type DistortionLayout } from './distortion-layout';
import {
  distortionCopy,
  distortionSentence,
  distortionTable,
  readDistortionAt,
} from './distortion-numbers';
import { frequencyRanges, type FrequencyRange } from './frequency-axis';
import { FrequencyCursor } from './frequency-cursor';
import './number-table';
import { hzText } from '../../src/locale/number-text';
import type { ChartLabel } from './response-labels';
import { narrowWidth } from './response-layout';
import { responseStyles } from './response-styles';

/** Points of the curves to an octave. */
const perOctave = 6;
const restingHz = 40;

interface Drawn {
  readonly key: readonly unknown[];
  readonly input: DistortionInput;
  readonly layout: DistortionLayout;
  readonly labels: readonly ChartLabel[];
  readonly steps: readonly number[];
}

/** What levels are related to: the fundamental, or the level it would have at the harmonic's own frequency. */
export type DistortionReference = 'fundamental' | 'own frequency';

/** Harmonics 2 to 5 of a speaker and their total against frequency; what is hidden is hatched and worded. */
@customElement('ll-distortion-chart')
export class DistortionChart extends LitElement {
  static override styles = [sharedStyles, chartStyles, responseStyles, distortionStyles];

  @property({ attribute: false }) distortion: DistortionReading | null = null;
  /** The speaker's label. */
  @property() channel = '';
  /** CSS colour of the total. */
  @property() colour = 'var(--ink)';
  @property() range: FrequencyRange = 'low';
  @property() unit: DistortionUnit = 'percent';
  @property() reference: DistortionReference = 'fundamental';

  private readonly size = new ChartSize(this);
  private drawn: Drawn | null = null;
  private readonly cursor = new FrequencyCursor(this, () => {
    const drawn = this.draw();
    if (!drawn) return null;
    const { layout, steps } = drawn;
    return { ...layout, steps, restingHz: nearestStep(steps, restingHz) ?? restingHz, perOctave };
  });

  protected override firstUpdated(): void {
    // Labels are set by the width of their text: set them again once the page's face has loaded.
    void document.fonts.ready.then(() => {
      this.drawn = null;
      this.requestUpdate();
    });
  }

  protected override willUpdate(changed: PropertyValues): void {
    if (!changed.has('distortion') && !changed.has('range')) return;
    this.cursor.keepTo(this.draw()?.steps ?? []);
  }

  private draw(): Drawn | null {
    const { distortion, colour, range, unit, reference } = this;
    if (distortion?.kind !== 'curves') return null;
    const width = this.size.width || 640;
    const key = [localeInForce(), distortion, colour, range, unit, reference, width];
    const old = this.drawn;
    if (old && key.every((value, i) => value === old.key[i])) return old;
    const input = { curves: related(distortion, reference), unit, range, width };
    const layout = layOutDistortion(input);
    const face = getComputedStyle(this).fontFamily || 'sans-serif';
    const [low, high] = frequencyRanges[range];
    this.drawn = {
      key,
      input,
      layout,
      labels: labelDistortion(input, layout, face, colour),
      steps: input.curves.hz.filter((hz) => hz >= low && hz <= high),
    };
    return this.drawn;
  }

  override render() {
    const drawn = this.draw();
    if (!drawn) {
      const sentence =
        this.distortion?.kind === 'cannot tell'
          ? this.distortion.sentence
          : msg('No distortion read yet.');
      return html`<p class="soft">${sentence}</p>`;
    }
    const { input, layout, labels } = drawn;
    const { unit } = this;
    return html`<figure
      class=${layout.width < narrowWidth ? 'narrow' : ''}
      aria-label=${msg(str`Distortion of ${this.channel}`)}
    >
      <div class="bar">${this.readout(input)} ${this.choices()}</div>
      <div class="frame" style="height:${layout.height}px">
        <svg width=${layout.width} height=${layout.height} aria-hidden="true">
          ${drawDistortion(input, layout, labels, this.colour)}
          ${drawDistortionCursor(input, layout, this.cursor.hz)}
        </svg>
        ${this.cursor.plane(msg(str`Cursor over the distortion of ${this.channel}`), (hz) =>
          distortionSentence(input.curves, hz, this.unit),
        )}
      </div>
      <figcaption class="soft small">${this.caption(input.curves)}</figcaption>
      <ll-number-table
        .caption=${msg(str`Distortion of ${this.channel}, every third of an octave`)}
        .numbers=${{
          table: () => distortionTable(input.curves, unit),
          copy: () => distortionCopy(input.curves),
        }}
      ></ll-number-table>
    </figure>`;
  }

  private readout({ curves, unit }: DistortionInput) {
    if (this.cursor.hz === null) {
      return html`<div class="readout soft">
        ${msg('Point at the chart, or use the arrow keys on it.')}
      </div>`;
    }
    return html`<div class="readout num" aria-hidden="true">
      <b>${hzText(this.cursor.hz)}</b>${readDistortionAt(curves, this.cursor.hz, unit).map(
        ({ name, text }) => html`<span><span class="soft">${name}</span> ${text}</span>`,
      )}
    </div>`;
  }

  private caption({ apartFromHz, total }: DistortionCurves) {
    const against =
      this.reference === 'fundamental'
        ? msg('Against the fundamental, as heard at the microphone.')
        : msg(
            'Against the level a tone has at the frequency of the harmonic: without the room and the roll-off.',
          );
    const apart =
      apartFromHz === null
        ? msg("The room's decay leaves 2nd and 3rd nowhere apart: use longer sweeps.")
        : msg(
            str`The room's decay leaves 2nd and 3rd apart everywhere from ${hzText(apartFromHz)} up.`,
          );
    return `${against} ${apart}${hatchedText(total)}`;
  }

  private choices() {
    const button = (pressed: boolean, text: string, choose: () => void) =>
      html`<button type="button" aria-pressed=${pressed ? 'true' : 'false'} @click=${choose}>
        ${text}
      </button>`;
    return html`<div class="groups">
      <div class="range" role="group" aria-label=${msg('Frequencies shown')}>
        ${button(this.range === 'low', msg('Low end'), () => (this.range = 'low'))}${button(
          this.range === 'full',
          msg('Whole range'),
          () => (this.range = 'full'),
        )}
      </div>
      <div class="range" role="group" aria-label=${msg('Unit')}>
        ${button(this.unit === 'percent', '%', () => (this.unit = 'percent'))}${button(
          this.unit === 'db',
          'dB',
          () => (this.unit = 'db'),
        )}
      </div>
      <div class="range" role="group" aria-label=${msg('Related to')}>
        ${button(this.reference === 'fundamental', msg('As heard'), () => {
          this.reference = 'fundamental';
        })}${button(this.reference === 'own frequency', msg('Without room'), () => {
          this.reference = 'own frequency';
        })}
      </div>
    </div>`;
  }
}

function hatchedText(total: DistortionCurves['total']): string {
  const words = new Set(hiddenStretches(total).map(({ by }) => hiddenWords[by]));
  if (words.size === 0) return '';
  const [first = '', ...rest] = words;
  const others = rest.map((text) => msg(str` or ${text.replace('hidden ', '')}`)).join('');
  return msg(str` Hatched: ${first}${others}; the total stays under it.`);
}

function related(distortion: DistortionCurves, reference: DistortionReference): DistortionCurves {
  if (reference === 'fundamental') return distortion;
  return { kind: 'curves', ...atSameFrequency(distortion) };
}

declare global {
  interface HTMLElementTagNameMap {
    'll-distortion-chart': DistortionChart;
  }
}
