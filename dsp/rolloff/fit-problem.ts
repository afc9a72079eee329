import { STEPS_PER_BAND } from './box-models';
import { whiteningMatrix } from './cholesky';
import { closeCovariance, closeMeanDb } from './close-residual';
import { BANDS_PER_OCTAVE, type RolloffBands } from './rolloff-bands';
import { SOFT_FLOOR } from './seat-levels';

/** Levels as the likelihood needs them; all arrays over the entries in use. */
export interface FitProblem {
  /**
   * First and last band of the mean that an entry is, as steps of 1/36 octave above 15 Hz; of
   * those entries that look at the whole response, which come first.
   */
  readonly fromStep: Int32Array;
  readonly toStep: Int32Array;
  /** Place in a model's early table, of the entries that look at an early part. */
  readonly early: Int32Array;
  /** Power added to data and model alike, re the passband: a floor, and the noise. */
  readonly floor: Float64Array;
  /** Level of the data on that floor, less the mean of the place, dB. */
  readonly levelDb: Float64Array;
  /** Inverse Cholesky factor of the covariance, n × n in rows. */
  readonly whitening: Float64Array;
  readonly ones: Float64Array;
}

export const DB = 10 / Math.LN10;

/**
 * Bands `first` to `last` of a reading close to the speaker. `widen` scales the covariance without
 * noise; `noiseShare` of the noise goes into the floor.
 */
export function prepareClose(
  bands: RolloffBands,
  first: number,
  last: number,
  widen: number,
  noiseShare: number,
): FitProblem {
  const n = last - first + 1;
  const part = (values: Float64Array): Float64Array => values.subarray(first, last + 1);
  const reference = topLevelPower(part(bands.power), part(bands.noisePower));
  const noise = part(bands.noisePower).map((p) => p / reference);
  const floor = noise.map((own) => SOFT_FLOOR + noiseShare * own);
  const signal = part(bands.power).map((p) => Math.max(p / reference, 0));
  const hz = part(bands.hz);
  const covariance = closeCovariance(hz).map((value) => value * widen);
  for (let i = 0; i < n; i++) {
    // m lines of signal S in noise N vary by (2SN + N²)/m, the noise taken off by N²/3m.
    const [s, own, m] = [signal[i] ?? 0, noise[i] ?? 0, part(bands.lines)[i] ?? 1];
    const variance = (2 * s * own + own * own) / m + (own * own) / (3 * m);
    covariance[i * n + i] =
      (covariance[i * n + i] ?? 0) + (DB * DB * variance) / (s + (floor[i] ?? 1)) ** 2;
  }
  const steps = Int32Array.from(hz, (_, i) => STEPS_PER_BAND * (first + i));
  return {
    fromStep: steps,
    toStep: steps,
    early: new Int32Array(0),
    floor,
    levelDb: hz.map((f, i) => DB * Math.log((signal[i] ?? 0) + (floor[i] ?? 1)) - closeMeanDb(f)),
    whitening: whiteningMatrix(covariance, n),
    ones: new Float64Array(n).fill(1),
  };
}

/** Mean level of the topmost octave and a half (180 to 500 Hz of a whole reading) as a power. */
export function topLevelPower(power: Float64Array, noise: Float64Array): number {
  const count = Math.min(power.length, Math.round(1.5 * BANDS_PER_OCTAVE));
  let sum = 0;
  for (let i = power.length - count; i < power.length; i++) {
    sum += Math.log(Math.max(power[i] ?? 0, noise[i] ?? 0, 1e-12));
  }
  return Math.exp(sum / count);
}
