import { curvePath, type PlotScales } from './curve-path';
import {
  hiddenStretches,
  namedCurves,
  type DistortionCurves,
  type DistortionUnit,
  type HiddenStretch,
} from './distortion-curves';
import {
  frequencyScale,
  frequencyTicks,
  type FrequencyRange,
  type FrequencyTick,
} from './frequency-axis';
import { isNumber, numberText } from '../../src/locale/number-text';
import type { Box } from './place-labels';
import { chartHeight, narrowWidth } from './response-layout';

export interface DistortionInput {
  readonly curves: DistortionCurves;
  readonly unit: DistortionUnit;
  readonly range: FrequencyRange;
  readonly width: number;
}

/** Everything of the chart that does not need text. */
export interface DistortionLayout {
  readonly width: number;
  readonly height: number;
  readonly plot: Box;
  readonly scales: PlotScales;
  readonly hzAt: (x: number) => number;
  readonly frequencies: readonly FrequencyTick[];
  readonly levels: readonly { readonly text: string; readonly y: number }[];
  /** The total first. */
  readonly lines: readonly { readonly id: string; readonly path: string }[];
  /** Where the total is hidden, from what it stays under down to the axis. */
  readonly hidden: readonly (HiddenStretch & { readonly path: string })[];
}

const depthsDb = [-80, -100] as const;
const leastTopDb = -20;
const percents = [100, 30, 10, 3, 1, 0.3, 0.1, 0.03, 0.01, 0.003, 0.001];
/** Half a sixth of an octave: a point stands for its band. */
const half = 2 ** (1 / 12);

/** Lays the chart out for a width in pixels. */
export function layOutDistortion({
  curves,
  unit,
  range,
  width,
}: DistortionInput): DistortionLayout {
  const height = chartHeight(width);
  const plot = { left: 42, top: 28, right: Math.max(120, width - 12), bottom: height - 24 };
  const named = namedCurves(curves);
  const told = named.flatMap(({ curve }) => curve.db.filter(isNumber));
  const most = Math.max(leastTopDb, ...told);
  const least = Math.min(depthsDb[0], ...told);
  const deepestDb = Math.max(depthsDb[1], 10 * Math.floor(least / 10));
  const topDb = Math.min(10, 10 * Math.ceil(most / 10));
  const x = frequencyScale(range, plot.left, plot.right);
  const y = (db: number): number =>
    plot.top + ((topDb - db) / (topDb - deepestDb)) * (plot.bottom - plot.top);
  const scales: PlotScales = { x: (hz) => x(hz), y };
  return {
    width,
    height,
    plot,
    scales,
    hzAt: (pixel) => x.invert(pixel),
    frequencies: frequencyTicks(range, scales.x, width < narrowWidth ? 32 : 30),
    levels: levelsOf(unit, topDb, deepestDb).map(({ db, text }) => ({ text, y: y(db) })),
    lines: named.map(({ id, curve }) => ({ id, path: curvePath(curves.hz, curve.db, scales) })),
    hidden: hiddenStretches(curves.total).map((stretch) => ({
      ...stretch,
      path: stairs(curves, stretch, scales, plot.bottom),
    })),
  };
}

function levelsOf(
  unit: DistortionUnit,
  topDb: number,
  deepestDb: number,
): { db: number; text: string }[] {
  if (unit === 'db') {
    const count = (topDb - deepestDb) / 10 + 1;
    return Array.from({ length: count }, (_, n) => topDb - 10 * n).map((db) => ({
      db,
      text: numberText(db),
    }));
  }
  return percents.flatMap((percent) => {
    const db = 20 * Math.log10(percent / 100);
    return db <= topDb && db >= deepestDb - 1e-9 ? [{ db, text: String(percent) }] : [];
  });
}

/** Outline of a stretch: a step for every band, down to the axis. */
function stairs(
  { hz, total }: DistortionCurves,
  { from, to }: HiddenStretch,
  { x, y }: PlotScales,
  bottom: number,
): string {
  const at = (value: number): string => value.toFixed(1);
  let path = '';
  for (let i = from; i <= to; i++) {
    const f = hz[i] ?? 0;
    const level = at(Math.min(bottom, y(total.floorDb[i] ?? -Infinity)));
    path += i === from ? `M${at(x(f / half))} ${at(bottom)}V${level}` : `V${level}`;
    path += `H${at(x(f * half))}`;
  }
  return path && `${path}V${at(bottom)}Z`;
}
