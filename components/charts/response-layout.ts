import { bandPath, curvePath, type Numbers, type PlotScales } from './curve-path';
import {
  frequencyRanges,
  frequencyScale,
  frequencyTicks,
  levelScale,
  levelTicks,
  type FrequencyRange,
  type FrequencyTick,
} from './frequency-axis';
import { isNumber } from '../../src/locale/number-text';
import type { Box } from './place-labels';
import type { ResponseTrace } from './response-trace';

export interface ResponseInput {
  readonly traces: readonly ResponseTrace[];
  readonly crossoverHz: number | null;
  /** The proposed crossover, when the tuner set another one. */
  readonly proposedHz: number | null;
  readonly range: FrequencyRange;
  readonly width: number;
}

/** Everything of the chart that does not need text: its scales, lines and areas in pixels. */
export interface ResponseLayout {
  readonly width: number;
  readonly height: number;
  readonly plot: Box;
  readonly scales: PlotScales;
  readonly hzAt: (x: number) => number;
  readonly frequencies: readonly FrequencyTick[];
  readonly levels: readonly { readonly db: number; readonly y: number }[];
  readonly lines: readonly {
    readonly channel: string;
    readonly colour: string;
    readonly path: string;
  }[];
  readonly noise: { readonly area: string; readonly line: string } | null;
  readonly fit: { readonly band: string; readonly line: string } | null;
}

/** Below this width, in pixels, labels are cut short and their numbers move under the chart. */
export const narrowWidth = 480;

export function chartHeight(width: number): number {
  if (width < narrowWidth) return 300;
  return Math.round(Math.max(320, Math.min(430, width * 0.56)));
}

/** Points of a curve that fall into the frequency range, plus one each side. */
function inRange(hz: Numbers, db: Numbers, range: FrequencyRange): number[] {
  const [low, high] = frequencyRanges[range];
  return hz.flatMap((f, i) => {
    const value = db[i];
    return isNumber(f) && f >= low && f <= high && isNumber(value) ? [value] : [];
  });
}

/** Lays the chart out for a width in pixels. */
export function layOutResponse(input: ResponseInput): ResponseLayout {
  const { traces, range, width } = input;
  const height = chartHeight(width);
  const plot = { left: 34, top: 28, right: Math.max(120, width - 12), bottom: height - 24 };
  const x = frequencyScale(range, plot.left, plot.right);
  const y = levelScale(
    traces.flatMap(({ curves: { response, fit } }, order) => [
      inRange(response.hz, response.db, range),
      ...(fit && order === 0 ? [inRange(fit.hz, fit.db, range)] : []),
    ]),
    traces
      .slice(0, 1)
      .map(({ curves }) => inRange(curves.response.hz, curves.response.noiseDb, range)),
    plot.top,
    plot.bottom,
  );
  const scales: PlotScales = { x: (hz) => x(hz), y: (db) => y(db) };
  const lead = traces[0];
  const fit = lead?.curves.fit;
  const response = lead?.curves.response;
  const noiseLine = response ? curvePath(response.hz, response.noiseDb, scales) : '';
  const floor = y.domain()[0] ?? 0;
  return {
    width,
    height,
    plot,
    scales,
    hzAt: (pixel) => x.invert(pixel),
    frequencies: frequencyTicks(range, scales.x, width < narrowWidth ? 32 : 30),
    levels: levelTicks(y).map((db) => ({ db, y: scales.y(db) })),
    lines: traces.map(({ channel, colour, curves }) => ({
      channel,
      colour,
      path: curvePath(curves.response.hz, curves.response.db, scales),
    })),
    noise:
      response && noiseLine
        ? { area: bandPath(response.hz, floor, response.noiseDb, scales), line: noiseLine }
        : null,
    fit: fit
      ? {
          band: bandPath(fit.hz, fit.low, fit.high, scales),
          line: curvePath(fit.hz, fit.db, scales),
        }
      : null,
  };
}
