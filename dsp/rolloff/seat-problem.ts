import { STEPS_PER_BAND } from './box-models';
import { whiteningMatrix } from './cholesky';
import { EARLY_SECONDS } from './early-part';
import { DB, topLevelPower, type FitProblem } from './fit-problem';
import { rolloffBandHz, type RolloffBands } from './rolloff-bands';
import { SEAT_BANDS, seatPowers, seatRange, SOFT_FLOOR } from './seat-levels';
import { seatCovariance, seatMeanDb, type Likeness } from './seat-residual';

/** What is looked at, and how. */
export interface SeatView {
  /** First and last band in use. */
  readonly first: number;
  readonly last: number;
  readonly likeness: Likeness;
  /** Share of the noise that goes into the floor. */
  readonly noiseShare: number;
}

/**
 * Readings of one speaker, or of several of one model, at seats: their levels averaged in dB over
 * all readings, with the statistics of rooms and of the noise.
 */
export function prepareSeats(readings: readonly RolloffBands[], view: SeatView): FitProblem {
  const { first, last, likeness, noiseShare } = view;
  const windows = readings.every(({ early }) => early.length === EARLY_SECONDS.length)
    ? 1 + EARLY_SECONDS.length
    : 1;
  const entries = Array.from({ length: windows * SEAT_BANDS }, (_, entry) => entry).filter(
    (entry) => {
      const [from, to] = seatRange(entry);
      return from >= first && to <= last;
    },
  );
  const scaled = readings.map((bands) => scaledPowers(bands, first, last));
  const mean = (pick: (one: Powers) => Float64Array): Float64Array =>
    Float64Array.from(entries, (e) => {
      let sum = 0;
      for (const one of scaled) sum += pick(one)[e] ?? 0;
      return sum / scaled.length;
    });
  const floor = mean(({ noise }) => noise).map((n) => SOFT_FLOOR + noiseShare * n);
  const level = mean(({ signal }) => signal).map(() => 0);
  const covariance = seatCovariance(entries, likeness);
  for (const one of scaled) {
    const lifted = Float64Array.from(
      entries,
      (e, i) => Math.max(one.signal[e] ?? 0, lowest(floor[i] ?? 1)) + (floor[i] ?? 1),
    );
    for (let i = 0; i < lifted.length; i++) {
      level[i] = (level[i] ?? 0) + (DB * Math.log(lifted[i] ?? 1)) / scaled.length;
    }
    addNoise(covariance, entries, lifted, one, scaled.length);
  }
  const whole = entries.filter((entry) => entry < SEAT_BANDS);
  return {
    fromStep: Int32Array.from(whole, (e) => STEPS_PER_BAND * seatRange(e)[0]),
    toStep: Int32Array.from(whole, (e) => STEPS_PER_BAND * seatRange(e)[1]),
    early: Int32Array.from(
      entries.filter((entry) => entry >= SEAT_BANDS),
      (entry) => entry - SEAT_BANDS,
    ),
    floor,
    levelDb: level.map((db, i) => db - seatMeanDb(entries[i] ?? 0)),
    whitening: whiteningMatrix(covariance, entries.length),
    ones: new Float64Array(entries.length).fill(1),
  };
}

/**
 * Noise less its mean goes below zero as often as above; its level in dB is right on average when
 * so much of that is kept.
 */
function lowest(floor: number): number {
  return -0.4 * (floor - SOFT_FLOOR);
}

interface Powers {
  readonly signal: Float64Array;
  readonly noise: Float64Array;
  /** Variance of the whole response's power per band. */
  readonly variance: Float64Array;
}

/** Powers re the passband: the topmost octave and a half in use. */
function scaledPowers(bands: RolloffBands, first: number, last: number): Powers {
  const part = (values: Float64Array): Float64Array => values.subarray(first, last + 1);
  const reference = topLevelPower(part(bands.power), part(bands.noisePower));
  const { signal, noise } = seatPowers(bands);
  return {
    signal: signal.map((p) => p / reference),
    noise: noise.map((p) => p / reference),
    variance: bands.power.map((p, k) => {
      const n = (bands.noisePower[k] ?? 0) / reference;
      const m = bands.lines[k] ?? 1;
      // m lines of signal S in noise N, less what the silence gave, three bands averaged.
      return (2 * (Math.max(p, 0) / reference) * n + n * n) / m + (n * n) / (3 * m);
    }),
  };
}

/**
 * Adds what noise does to one of `count` readings' levels. Means over bands share bands; under a
 * window e^(−t/τ) noise is alike within 1/πτ, and f·0.41·τ of it is averaged.
 */
function addNoise(
  covariance: Float64Array,
  entries: readonly number[],
  lifted: Float64Array,
  { signal, noise, variance }: Powers,
  count: number,
): void {
  const n = entries.length;
  const early = (e: number): number => {
    const tau = EARLY_SECONDS[Math.floor(e / SEAT_BANDS) - 1] ?? 1;
    const own = 2 * Math.max(signal[e] ?? 0, 0) * (noise[e] ?? 0) + (noise[e] ?? 0) ** 2;
    return own / Math.max(1, 0.41 * middleHz(e) * tau);
  };
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      const [a, b] = [entries[i] ?? 0, entries[j] ?? 0];
      const window = Math.floor(a / SEAT_BANDS);
      if (window !== Math.floor(b / SEAT_BANDS)) continue;
      const tau = EARLY_SECONDS[window - 1];
      const power =
        tau === undefined
          ? sharedVariance(a, b, variance)
          : Math.sqrt(early(a) * early(b)) /
            (1 + (Math.PI * tau * (middleHz(a) - middleHz(b))) ** 2);
      const db2 = (DB * DB * power) / ((lifted[i] ?? 1) * (lifted[j] ?? 1) * count * count);
      covariance[i * n + j] = (covariance[i * n + j] ?? 0) + db2;
      if (i !== j) covariance[j * n + i] = covariance[i * n + j] ?? 0;
    }
  }
}

function sharedVariance(a: number, b: number, variance: Float64Array): number {
  const [fromA, toA] = seatRange(a);
  const [fromB, toB] = seatRange(b);
  let sum = 0;
  for (let k = Math.max(fromA, fromB); k <= Math.min(toA, toB); k++) sum += variance[k] ?? 0;
  return sum / ((toA - fromA + 1) * (toB - fromB + 1));
}

function middleHz(entry: number): number {
  const [from, to] = seatRange(entry);
  return rolloffBandHz((from + to) / 2);
}
