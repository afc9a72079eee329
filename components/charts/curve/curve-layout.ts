import { scaleLinear, scaleLog } from 'd3';
import { curvePath, curvePlaces } from '../curve-path';
import { ticksBetween, type FrequencyTick } from '../frequency-axis';
import { numberText } from '../../../src/locale/number-text';
import type { Box } from '../place-labels';
import { chartHeight, narrowWidth } from '../response-layout';
import type { CurveAxes, CurveTrace } from './curve-trace';

/** Everything of the chart in pixels. */
export interface CurveLayout {
  readonly width: number;
  readonly height: number;
  readonly plot: Box;
  readonly xAt: (x: number) => number;
  readonly yAt: (y: number) => number;
  readonly valueAt: (pixel: number) => number;
  readonly columns: readonly FrequencyTick[];
  readonly rows: readonly { readonly text: string; readonly y: number }[];
  readonly lines: readonly { readonly trace: CurveTrace; readonly path: string }[];
}

const pixelsPerRow = 34;

/** Lays the chart out for a width in pixels, with so many of them kept free above the plot. */
export function layOutCurves(
  traces: readonly CurveTrace[],
  axes: CurveAxes,
  width: number,
  top = 24,
): CurveLayout {
  const height = chartHeight(width);
  const plot = { left: 46, top, right: Math.max(120, width - 14), bottom: height - 24 };
  const { low, high } = axes.x;
  const scale = axes.x.kind === 'frequency' ? scaleLog() : scaleLinear();
  scale.domain([low, high]).range([plot.left, plot.right]);
  const level = scaleLinear().domain([axes.y.low, axes.y.high]).range([plot.bottom, plot.top]);
  const xAt = (x: number): number => scale(x);
  const yAt = (y: number): number => level(y);
  const ticks = level.ticks(Math.max(3, Math.floor((plot.bottom - plot.top) / pixelsPerRow)));
  const digits = Math.max(0, ...ticks.map(decimals));
  const path = pathMaker(axes, xAt, yAt);
  return {
    width,
    height,
    plot,
    xAt,
    yAt,
    valueAt: (pixel) => scale.invert(pixel),
    columns:
      axes.x.kind === 'frequency'
        ? ticksBetween(low, high, xAt, width < narrowWidth ? 32 : 30)
        : timeTicks(low, high, xAt, width < narrowWidth ? 4 : 8),
    rows: ticks.map((value) => ({ text: numberText(value, digits), y: yAt(value) })),
    lines: traces.map((trace) => ({ trace, path: path(trace) })),
  };
}

/** Milliseconds along the time axis. */
function timeTicks(
  low: number,
  high: number,
  xAt: (x: number) => number,
  count: number,
): FrequencyTick[] {
  const milliseconds = scaleLinear()
    .domain([low * 1000, high * 1000])
    .ticks(count);
  const digits = Math.max(0, ...milliseconds.map(decimals));
  return milliseconds.map((ms) => ({
    hz: ms / 1000,
    x: xAt(ms / 1000),
    text: numberText(ms, digits),
  }));
}

function decimals(value: number): number {
  const [, after = ''] = String(Number(value.toPrecision(8))).split('.');
  return after.length;
}

/** Draws traces; those on the same places share what was worked out of them. */
function pathMaker(
  axes: CurveAxes,
  xAt: (x: number) => number,
  yAt: (y: number) => number,
): (trace: CurveTrace) => string {
  const known = new Map<
    CurveTrace['x'],
    { hz: readonly number[]; places: readonly (string | null)[] }
  >();
  return ({ x, y }) => {
    // The paths of the other charts begin at positive frequencies only; time has a zero.
    const shift = axes.x.kind === 'time' ? 1 - Math.min(0, ...x.slice(0, 1)) : 0;
    const scale = (value: number): number => xAt(value - shift);
    let of = known.get(x);
    if (!of) {
      const hz = shift === 0 ? x : x.map((value) => value + shift);
      known.set(x, (of = { hz, places: curvePlaces(hz, scale) }));
    }
    return curvePath(of.hz, y, { x: scale, y: yAt }, of.places);
  };
}
