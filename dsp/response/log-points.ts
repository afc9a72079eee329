/** Index of the last point at or below `hz`; −1 when there is none. Points rise. */
export function pointBelow(points: ArrayLike<number>, hz: number): number {
  let low = -1;
  let high = points.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((points[middle] ?? Infinity) <= hz) low = middle;
    else high = middle;
  }
  return low;
}

/**
 * Value at `at`, linear in log frequency between points, the end values outside. `point` is the
 * index that pointBelow gives.
 */
export function logInterpolate(
  hz: ArrayLike<number>,
  values: ArrayLike<number>,
  at: number,
  point = pointBelow(hz, at),
): number {
  const low = Math.max(point, 0);
  const high = Math.min(point + 1, hz.length - 1);
  const from = hz[low] ?? 0;
  const to = hz[high] ?? 0;
  const start = values[low] ?? 0;
  const part = to > from ? Math.log(at / from) / Math.log(to / from) : 0;
  return start + part * ((values[high] ?? 0) - start);
}
