import { scaleLinear, scaleLog } from 'd3';
import type { Numbers } from './curve-path';
import { isNumber } from '../../src/locale/number-text';

export type FrequencyRange = 'full' | 'low';

export const frequencyRanges: Readonly<Record<FrequencyRange, readonly [number, number]>> = {
  full: [15, 20_000],
  low: [12, 500],
};

/** Every frequency that may carry a grid line, the most wanted first. */
const wanted = [
  100, 1000, 10_000, 20, 50, 200, 500, 2000, 5000, 20_000, 30, 80, 40, 60, 300, 150, 3000, 400, 120,
];

export interface FrequencyTick {
  readonly hz: number;
  readonly x: number;
  readonly text: string;
}

/** Log-frequency scale over the pixels of a plot. */
export function frequencyScale(range: FrequencyRange, left: number, right: number) {
  const [low, high] = frequencyRanges[range];
  return scaleLog().domain([low, high]).range([left, right]);
}

/** Ticks in rising order, no two nearer than `spacing` pixels. */
export function frequencyTicks(
  range: FrequencyRange,
  x: (hz: number) => number,
  spacing: number,
): FrequencyTick[] {
  const [low, high] = frequencyRanges[range];
  return ticksBetween(low, high, x, spacing);
}

/** Ticks from `low` to `high` Hz in rising order, no two nearer than `spacing` pixels. */
export function ticksBetween(
  low: number,
  high: number,
  x: (hz: number) => number,
  spacing: number,
): FrequencyTick[] {
  const kept: FrequencyTick[] = [];
  for (const hz of wanted) {
    if (hz < low || hz > high) continue;
    const at = x(hz);
    if (kept.some((tick) => Math.abs(tick.x - at) < spacing)) continue;
    kept.push({ hz, x: at, text: hz >= 1000 ? `${String(hz / 1000)}\u202fk` : String(hz) });
  }
  return kept.sort((a, b) => a.hz - b.hz);
}

const topDb = 6;
const deepestDb = -42;
const shallowestDb = -30;
const stepDb = 6;

/** Decibel scale that holds the curves: whole steps of 6 dB, deep enough to show the noise. */
export function levelScale(
  curves: readonly Numbers[],
  noise: readonly Numbers[],
  top: number,
  bottom: number,
) {
  const high = Math.max(topDb, ...curves.flatMap((curve) => curve.filter(isNumber)));
  const noiseValues = noise.flatMap((curve) => curve.filter(isNumber)).sort((a, b) => a - b);
  const low = noiseValues[Math.floor(noiseValues.length * 0.5)] ?? shallowestDb;
  const ceiling = Math.min(24, Math.ceil(high / stepDb) * stepDb);
  const floor = Math.max(deepestDb, Math.min(shallowestDb, Math.floor(low / stepDb) * stepDb));
  return scaleLinear().domain([floor, ceiling]).range([bottom, top]);
}

/** Whole steps of 6 or 12 dB, whichever leaves room between the lines. */
export function levelTicks(y: { domain(): number[]; (db: number): number }): number[] {
  const [floor = 0, ceiling = 0] = y.domain();
  const step = Math.abs(y(stepDb) - y(0)) < 22 ? 2 * stepDb : stepDb;
  const ticks: number[] = [];
  for (let db = Math.floor(ceiling / step) * step; db >= floor; db -= step) ticks.push(db);
  return ticks;
}
