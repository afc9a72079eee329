import { integratePower } from '../response/power-spectrum';

/**
 * Reads Σ weight·value/Σ weight over 1/fraction octave round a frequency, from both sums at the
 * bins 0, hzPerBin …; `weighted` holds weight·value. Without a fraction: both on straight lines
 * between the two bins next to it. 0 where nothing has weight. Throws RangeError for a fraction
 * that is not positive.
 */
export function binMean(
  weighted: Float64Array,
  weights: Float64Array,
  hzPerBin: number,
  fraction?: number,
): (hz: number) => number {
  if (fraction === undefined) {
    return (hz) => {
      const place = hz / hzPerBin;
      const below = Math.min(Math.floor(place), weights.length - 2);
      const into = place - below;
      const at = (values: Float64Array): number =>
        (values[below] ?? 0) * (1 - into) + (values[below + 1] ?? 0) * into;
      const weight = at(weights);
      return weight > 0 ? at(weighted) / weight : 0;
    };
  }
  if (!(fraction > 0)) throw new RangeError(`fraction must be positive, got ${fraction}`);
  const half = 2 ** (0.5 / fraction);
  const top = integratePower({ hzPerBin, power: weighted });
  const bottom = integratePower({ hzPerBin, power: weights });
  return (hz) => {
    const weight = bottom(hz * half) - bottom(hz / half);
    return weight > 0 ? (top(hz * half) - top(hz / half)) / weight : 0;
  };
}
