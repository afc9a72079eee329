import { STEPS_PER_BAND } from './box-models';
import { whiteningMatrix } from './cholesky';
import { BANDS_PER_OCTAVE, type RolloffBands } from './rolloff-bands';
import { residualCovariance, residualMeanDb, residualSpread, type Place } from './room-residual';

/** Bands as the likelihood needs them; all arrays over the bands in use, lowest first. */
export interface FitProblem {
  /** First and last band of the mean around each band, as steps of 1/36 octave above 15 Hz. */
  readonly fromStep: Int32Array;
  readonly toStep: Int32Array;
  /** Power added to data and model alike, re the passband: a floor, and the noise. */
  readonly floor: Float64Array;
  /** Level of the data on that floor, less the mean of the room, dB. */
  readonly levelDb: Float64Array;
  /** Inverse Cholesky factor of the covariance, n × n in rows. */
  readonly whitening: Float64Array;
  readonly ones: Float64Array;
}

const SOFT_FLOOR = 1e-3;
const DB = 10 / Math.LN10;
/** Bands to each side averaged by power: a room's dips are deep and narrow, their mean is not. */
const HALF_WIDTH = { room: 3, close: 0 } as const;
/** Variance that smoothing leaves over: dB², and of the room's own. */
const ROUGH = 0.2;
const ROUGH_SHARE = 0.15;

/**
 * Prepares bands `first` to `last` for the likelihood. `widen` scales the covariance without noise;
 * `noiseShare` of the noise goes into the floor.
 */
export function prepareProblem(
  bands: RolloffBands,
  first: number,
  last: number,
  place: Place,
  widen: number,
  noiseShare: number,
): FitProblem {
  const n = last - first + 1;
  const part = (values: Float64Array): Float64Array => values.subarray(first, last + 1);
  const half = HALF_WIDTH[place.place];
  const reference = topLevelPower(part(bands.power), part(bands.noisePower));
  const power = part(bands.power).map((p) => p / reference);
  const noise = part(bands.noisePower).map((p) => p / reference);
  const smoothNoise = average(noise, half);
  const floor = smoothNoise.map((own) => SOFT_FLOOR + noiseShare * own);
  const signal = average(power, half).map((p) => Math.max(p, 0));
  const hz = part(bands.hz);
  const covariance = smoothCovariance(residualCovariance(hz, place), n, half);
  addRoughness(covariance, hz, place);
  for (let i = 0; i < covariance.length; i++) covariance[i] = (covariance[i] ?? 0) * widen;
  addNoise(covariance, half, { power, noise, lines: part(bands.lines), signal, floor });
  const place0 = (i: number): number => STEPS_PER_BAND * (first + i);
  return {
    fromStep: Int32Array.from(hz, (_, i) => place0(Math.max(0, i - half))),
    toStep: Int32Array.from(hz, (_, i) => place0(Math.min(n - 1, i + half))),
    floor,
    levelDb: hz.map(
      (f, i) => DB * Math.log((signal[i] ?? 0) + (floor[i] ?? 1)) - residualMeanDb(f, place),
    ),
    whitening: whiteningMatrix(covariance, n),
    ones: new Float64Array(n).fill(1),
  };
}

/** Mean level of the topmost octave and a half (180 to 500 Hz of a whole reading) as a power. */
function topLevelPower(power: Float64Array, noise: Float64Array): number {
  const count = Math.min(power.length, Math.round(1.5 * BANDS_PER_OCTAVE));
  let sum = 0;
  for (let i = power.length - count; i < power.length; i++) {
    sum += Math.log(Math.max(power[i] ?? 0, noise[i] ?? 0, 1e-12));
  }
  return Math.exp(sum / count);
}

/** Mean over up to `half` neighbours to each side. */
function average(values: Float64Array, half: number): Float64Array {
  return values.map((_, i) => {
    const from = Math.max(0, i - half);
    const to = Math.min(values.length - 1, i + half);
    let sum = 0;
    for (let j = from; j <= to; j++) sum += values[j] ?? 0;
    return sum / (to - from + 1);
  });
}

/** A C Aᵀ for the averaging A of `average`. */
function smoothCovariance(covariance: Float64Array, n: number, half: number): Float64Array {
  if (half === 0) return covariance;
  const rows = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    rows.set(average(covariance.subarray(i * n, (i + 1) * n), half), i * n);
  }
  const out = new Float64Array(n * n);
  for (let column = 0; column < n; column++) {
    const down = average(
      Float64Array.from({ length: n }, (_, i) => rows[i * n + column] ?? 0),
      half,
    );
    for (let i = 0; i < n; i++) out[i * n + column] = down[i] ?? 0;
  }
  return out;
}

function addRoughness(covariance: Float64Array, hz: Float64Array, place: Place): void {
  if (place.place === 'close') return;
  const spread = residualSpread(hz, place);
  const n = hz.length;
  for (let i = 0; i < n; i++) {
    covariance[i * n + i] =
      (covariance[i * n + i] ?? 0) + ROUGH + ROUGH_SHARE * (spread[i] ?? 0) ** 2;
  }
}

interface NoisyBands {
  readonly power: Float64Array;
  readonly noise: Float64Array;
  readonly lines: Float64Array;
  readonly signal: Float64Array;
  readonly floor: Float64Array;
}

/**
 * Adds what noise does to the levels. A band's power of m lines in noise N varies by
 * (2SN + N²)/m, the noise that was subtracted by N²/3m; in dB, on the floor, divided by (S + floor).
 */
function addNoise(covariance: Float64Array, half: number, bands: NoisyBands): void {
  const n = bands.power.length;
  const own = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    const s = Math.max(bands.power[i] ?? 0, 0);
    const noise = bands.noise[i] ?? 0;
    const m = bands.lines[i] ?? 1;
    own[i * n + i] = (2 * s * noise + noise * noise) / m + (noise * noise) / (3 * m);
  }
  const smooth = smoothCovariance(own, n, half);
  const level = bands.signal.map((s, i) => s + (bands.floor[i] ?? 1));
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      const at = i * n + j;
      covariance[at] =
        (covariance[at] ?? 0) + (DB * DB * (smooth[at] ?? 0)) / ((level[i] ?? 1) * (level[j] ?? 1));
    }
  }
}
