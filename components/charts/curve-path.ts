import { area } from 'd3';
import { isNumber } from '../../src/locale/number-text';

/** The plotting functions of one chart: data to pixels. */
export interface PlotScales {
  readonly x: (hz: number) => number;
  readonly y: (db: number) => number;
}

/** Numbers as they may come from a file: a gap where one is missing. */
export type Numbers = readonly (number | null)[];

const round = (value: number): string => value.toFixed(1);

function roundPath(path: string | null): string {
  return (path ?? '').replace(/-?\d+\.\d+/g, (number) => round(Number(number)));
}

/** A pixel to a tenth, without a trailing zero. */
const tenth = (pixel: number): string => String(Math.round(pixel * 10) / 10);

/** Where the frequencies of curves lie, as it stands in their paths; null where there is none. */
export function curvePlaces(hz: Numbers, x: PlotScales['x']): readonly (string | null)[] {
  return hz.map((value) => (isPositive(value) ? tenth(x(value)) : null));
}

/**
 * Path of a curve; it breaks where a number is missing. Curves with the same frequencies share their
 * places, so that many of them can be drawn in every frame.
 */
export function curvePath(
  hz: Numbers,
  db: Numbers,
  scales: PlotScales,
  places = curvePlaces(hz, scales.x),
): string {
  let path = '';
  /** Points since the last break. */
  let run = 0;
  // A point by itself is closed, so that its round cap shows.
  const end = (): string => (run === 1 ? 'Z' : '');
  for (let i = 0; i < places.length; i++) {
    const x = places[i];
    const value = db[i];
    if (typeof x === 'string' && isNumber(value)) {
      path += `${run === 0 ? 'M' : 'L'}${x},${tenth(scales.y(value))}`;
      run++;
    } else {
      path += end();
      run = 0;
    }
  }
  return path + end();
}

/** Path of the area between two curves, or between a curve and a constant. */
export function bandPath(
  hz: Numbers,
  low: Numbers | number,
  high: Numbers,
  scales: PlotScales,
): string {
  const lowAt = (i: number) => (typeof low === 'number' ? low : low[i]);
  const indices = hz.map((_, index) => index);
  return roundPath(
    area<number>()
      .defined((i) => isPositive(hz[i]) && isNumber(lowAt(i)) && isNumber(high[i]))
      .x((i) => scales.x(hz[i] ?? 1))
      .y0((i) => scales.y(lowAt(i) ?? 0))
      .y1((i) => scales.y(high[i] ?? 0))(indices),
  );
}

/** Value of a curve at a frequency, straight between its points in log frequency; null in a gap. */
export function curveAt(hz: Numbers, db: Numbers, atHz: number): number | null {
  for (let i = 1; i < hz.length; i++) {
    const f0 = hz[i - 1];
    const f1 = hz[i];
    if (!isPositive(f0) || !isPositive(f1) || atHz < f0 || atHz > f1) continue;
    const d0 = db[i - 1];
    const d1 = db[i];
    const share = f1 === f0 ? 0 : Math.log(atHz / f0) / Math.log(f1 / f0);
    if (share === 0 && isNumber(d0)) return d0;
    if (share === 1 && isNumber(d1)) return d1;
    return isNumber(d0) && isNumber(d1) ? d0 + share * (d1 - d0) : null;
  }
  return hz.length === 1 && hz[0] === atHz && isNumber(db[0]) ? db[0] : null;
}

function isPositive(value: number | null | undefined): value is number {
  return isNumber(value) && value > 0;
}
