/** Weighted mean of spectra and their spread, bin by bin. */
export interface PeriodAverage {
  /** Effective number of spectra averaged. */
  readonly count: number;
  /** Sum of the weights: spectra added, at most the limit. */
  readonly weight: number;
  /** Mean, as interleaved re, im. */
  readonly mean: Float64Array;
  add(spectrum: Float64Array): void;
  clear(): void;
  /** From now on the mean forgets what is more than about so many spectra old. */
  setMost(count: number): void;
  /** The noise that comes with spectra is another from now on, in power by this factor. */
  scaleNoise(ratio: number): void;
  /** Variance of a single spectrum round the mean, unbiased, per bin; zeros below two spectra. */
  variance(): Float64Array;
}

/**
 * Mean over spectra of `bins` complex bins; beyond `most` of them it forgets exponentially, so that
 * it follows what changes and its memory stays flat. Variances below rounding read 0.
 */
export function createPeriodAverage(bins: number, most: number): PeriodAverage {
  const mean = new Float64Array(2 * bins);
  const spread = new Float64Array(bins);
  let limit = checkMost(most);
  let weight = 0;
  let squares = 0;
  return {
    get count() {
      return squares > 0 ? (weight * weight) / squares : 0;
    },
    get weight() {
      return weight;
    },
    mean,
    add(spectrum) {
      const keep = weight + 1 > limit ? (limit - 1) / weight : 1;
      weight = keep * weight + 1;
      squares = keep * keep * squares + 1;
      const share = 1 / weight;
      // West's update: the spread is about the mean as it moves, free of cancellation.
      for (let k = 0; k < bins; k++) {
        const re = (spectrum[2 * k] ?? 0) - (mean[2 * k] ?? 0);
        const im = (spectrum[2 * k + 1] ?? 0) - (mean[2 * k + 1] ?? 0);
        mean[2 * k] = (mean[2 * k] ?? 0) + share * re;
        mean[2 * k + 1] = (mean[2 * k + 1] ?? 0) + share * im;
        spread[k] = keep * (spread[k] ?? 0) + (1 - share) * (re * re + im * im);
      }
    },
    clear() {
      mean.fill(0);
      spread.fill(0);
      weight = 0;
      squares = 0;
    },
    scaleNoise(ratio) {
      for (let k = 0; k < bins; k++) spread[k] = (spread[k] ?? 0) * ratio;
    },
    setMost(count) {
      limit = checkMost(count);
    },
    variance() {
      const free = weight - squares / Math.max(weight, 1);
      return free > 0.5 ? spread.map((value) => value / free) : new Float64Array(bins);
    },
  };
}

function checkMost(most: number): number {
  if (!(most >= 2)) throw new RangeError(`at least 2 spectra are averaged, got ${most}`);
  return most;
}
