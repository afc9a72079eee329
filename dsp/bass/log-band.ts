import { checkGrid } from './transfer';

/** A stretch of a grid with the weights of a mean over it. */
export interface LogBand {
  /** First entry of the grid that counts, and the one after the last. */
  readonly first: number;
  readonly end: number;
  /** One per entry from `first` on; they sum to 1. */
  readonly weights: Float64Array;
}

/**
 * Weights of the mean over log f from lowHz to highHz, which is that of pink noise, by the
 * trapezoidal rule over the grid's frequencies inside. Throws RangeError for a grid that does not
 * rise, a band upside down, or one that holds fewer than two frequencies.
 */
export function logBand(hz: Float64Array, lowHz: number, highHz: number): LogBand {
  checkGrid(hz);
  if (!(lowHz > 0 && lowHz < highHz)) {
    throw new RangeError(`band must be 0 < lowHz < highHz, got ${lowHz}, ${highHz}`);
  }
  // Rounding must not put an edge out that lies on the grid.
  const first = hz.findIndex((f) => f >= lowHz * (1 - 1e-9));
  const end = hz.findLastIndex((f) => f <= highHz * (1 + 1e-9)) + 1;
  if (first < 0 || end - first < 2) {
    throw new RangeError(`the grid holds fewer than two frequencies from ${lowHz} to ${highHz} Hz`);
  }
  const weights = new Float64Array(end - first);
  for (let k = first; k + 1 < end; k++) {
    const width = Math.log((hz[k + 1] ?? 1) / (hz[k] ?? 1)) / 2;
    weights[k - first] = (weights[k - first] ?? 0) + width;
    weights[k - first + 1] = (weights[k - first + 1] ?? 0) + width;
  }
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return { first, end, weights: weights.map((weight) => weight / total) };
}

/** Band about a crossover where both sides play, half an octave to either side. */
export function crossoverBand(hz: Float64Array, crossoverHz: number): LogBand {
  if (!(crossoverHz > 0 && crossoverHz < Infinity)) {
    throw new RangeError(`crossoverHz must be positive, got ${crossoverHz}`);
  }
  return logBand(hz, crossoverHz / Math.SQRT2, crossoverHz * Math.SQRT2);
}

/**
 * Mean of a curve over 1/fraction octave round every frequency of a grid, over log f; at the ends
 * of the grid over what there is. Throws RangeError for lengths that differ or fraction ≤ 0.
 */
export function smoothOnGrid(
  hz: Float64Array,
  values: Float64Array,
  fraction: number,
): Float64Array {
  checkGrid(hz);
  if (values.length !== hz.length) {
    throw new RangeError(`values must be ${hz.length}, got ${values.length}`);
  }
  if (!(fraction > 0)) throw new RangeError(`fraction must be positive, got ${fraction}`);
  const half = 2 ** (0.5 / fraction) * (1 + 1e-9);
  const sums = new Float64Array(hz.length + 1);
  const widths = new Float64Array(hz.length + 1);
  for (let k = 0; k < hz.length; k++) {
    const below = hz[k - 1] ?? hz[k] ?? 1;
    const above = hz[k + 1] ?? hz[k] ?? 1;
    const width = Math.log(above / below);
    sums[k + 1] = (sums[k] ?? 0) + width * (values[k] ?? 0);
    widths[k + 1] = (widths[k] ?? 0) + width;
  }
  let [from, to] = [0, 0];
  return hz.map((f) => {
    while ((hz[from] ?? f) * half < f) from++;
    while (to < hz.length && (hz[to] ?? f) <= f * half) to++;
    return ((sums[to] ?? 0) - (sums[from] ?? 0)) / ((widths[to] ?? 0) - (widths[from] ?? 0));
  });
}
