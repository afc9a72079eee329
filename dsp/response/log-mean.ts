/**
 * Mean of values over log frequency from lowHz to highHz: each value in the band stands from half way
 * to the one before it to half way to the one after, cut at the ends of the band. Nulls are left
 * out; null when nothing in the band is told. Frequencies rise. Throws RangeError unless
 * 0 < lowHz < highHz.
 */
export function logMean(
  hz: ArrayLike<number>,
  values: ArrayLike<number | null>,
  lowHz: number,
  highHz: number,
): number | null {
  if (!(lowHz > 0 && lowHz < highHz && highHz < Infinity)) {
    throw new RangeError(`a band needs 0 < lowHz < highHz, got ${lowHz}, ${highHz}`);
  }
  let sum = 0;
  let width = 0;
  let last: number | null = null;
  for (let k = 0; k < hz.length; k++) {
    const own = hz[k] ?? 0;
    const value = values[k] ?? null;
    if (value === null || own < lowHz || own > highHz) continue;
    const from = Math.max(Math.sqrt(own * (hz[k - 1] ?? own)), lowHz);
    const to = Math.min(Math.sqrt(own * (hz[k + 1] ?? own)), highHz);
    const share = Math.log(to / from);
    sum += share * value;
    width += share;
    last = value;
  }
  // A curve of one frequency has no width.
  return width > 0 ? sum / width : last;
}
