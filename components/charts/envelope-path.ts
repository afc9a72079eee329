import type { ReadingCurves } from '../../src/reading/reading';
import { isNumber } from '../../src/locale/number-text';

const columnPixels = 2;

/** Time scale of the lanes: seconds of flight to pixels and back. */
export interface TimeScale {
  invert(pixel: number): number;
  range(): number[];
}

/**
 * Closed path of an envelope standing on `base`, at most `tall` pixels high: straight between its
 * points, and its largest value where several fall into one column of pixels.
 */
export function envelopePath(
  envelope: ReadingCurves['envelope'],
  referenceSeconds: number,
  x: TimeScale,
  base: number,
  tall: number,
): string {
  const { startSeconds, stepSeconds, level } = envelope;
  const [left = 0, right = 0] = x.range();
  if (!(stepSeconds > 0) || level.length === 0) return '';
  const indexAt = (pixel: number) =>
    (x.invert(pixel) - referenceSeconds - startSeconds) / stepSeconds;
  const points: string[] = [];
  let first = left;
  let last = left;
  for (let pixel = left; pixel <= right; pixel += columnPixels) {
    const index = indexAt(pixel);
    if (index < 0 || index > level.length - 1) continue;
    const high = largestBetween(level, index, indexAt(pixel + columnPixels));
    if (points.length === 0) first = pixel;
    last = pixel;
    points.push(`${pixel.toFixed(1)} ${(base - high * tall).toFixed(1)}`);
  }
  if (points.length === 0) return '';
  return `M${first.toFixed(1)} ${base.toFixed(1)}L${points.join('L')}L${last.toFixed(1)} ${base.toFixed(1)}Z`;
}

/** Largest value between two fractional indices, 0 to 1; missing values count as 0. */
function largestBetween(level: readonly (number | null)[], from: number, to: number): number {
  let high = Math.max(valueAt(level, from), 0);
  for (let i = Math.ceil(from); i < Math.min(level.length, to); i++) {
    high = Math.max(high, valueAt(level, i));
  }
  return Math.min(1, high);
}

function valueAt(level: readonly (number | null)[], index: number): number {
  const below = Math.floor(index);
  const [a, b] = [level[below], level[Math.min(level.length - 1, below + 1)]];
  const low = isNumber(a) ? a : 0;
  return low + ((isNumber(b) ? b : 0) - low) * (index - below);
}
