import {
  boxShapes,
  FIRST_F0_STEP,
  LAST_F0_STEP,
  LOWEST_STEP,
  STEPS_PER_OCTAVE,
  type BoxKind,
  type BoxShape,
} from './box-models';
import { whiteningMatrix } from './cholesky';
import { readPosterior, type RolloffFit } from './read-posterior';
import { BANDS_PER_OCTAVE, LOWEST_BAND_HZ, type RolloffBands } from './rolloff-bands';
import { LEVEL_VARIANCE, residualCovariance, residualMeanDb, type Place } from './room-residual';
import { weightsOf } from './posterior';

/** How a reading was taken and what is known beforehand. */
export interface RolloffOptions {
  /** 'room': at a seat. 'close': at the driver, or cone and port summed by area. */
  readonly place: 'room' | 'close';
  /** Positions averaged in the bands; 1 when not given. */
  readonly positions?: number;
  /** Speakers of one model averaged in the bands; 1 when not given. */
  readonly sameModel?: number;
  /** Where the stimulus begins: bands below are left out. */
  readonly lowerHz?: number;
  /** Highest band used, 60 … 500; about 90 for subs behind a low-pass. */
  readonly upperHz?: number;
  /** f3 on the speaker's sheet, trusted to ±15 %. */
  readonly sheetF3Hz?: number;
  /** Close to the cone of a box whose port was not captured. */
  readonly coneOnly?: boolean;
}

/** Why a reading cannot support a roll-off. */
export interface RolloffRefusal {
  readonly refused: 'too few bands' | 'noise';
  /** Bands that stand 6 dB or more above the noise. */
  readonly bandsWithMargin: number;
}

const MARGIN_DB = 6;
const FEWEST_BANDS = 12;
const SOFT_FLOOR = 1e-3;
const DB = 10 / Math.LN10;
const PRIOR_F3_HZ = [14, 200] as const;
const SHEET_TRUST = 0.9;

/**
 * Roll-off of a speaker from its bass in bands: the posterior over closed and vented box models,
 * given that the room adds a Gaussian process in dB of known mean and covariance. Noise raises the
 * floor under data and models alike and the variance of each band by what it does to the level.
 * Refuses (a value, not an error) when fewer than 12 bands stand 6 dB above the noise.
 * Throws RangeError for options out of range.
 */
export function fitRolloff(
  bands: RolloffBands,
  options: RolloffOptions,
): RolloffFit | RolloffRefusal {
  const place = placeOf(options);
  const used = usedBands(bands, options);
  const bandsWithMargin = used.filter((k) => (bands.marginDb[k] ?? 0) >= MARGIN_DB).length;
  if (used.length < FEWEST_BANDS) return { refused: 'too few bands', bandsWithMargin };
  if (bandsWithMargin < FEWEST_BANDS) return { refused: 'noise', bandsWithMargin };
  const problem = prepare(bands, used, place, options.coneOnly === true);
  const shapes = boxShapes(options.coneOnly === true);
  const logs = logPosteriors(problem, shapes, options.sheetF3Hz);
  const weights = weightsOf(logs);
  return readPosterior(shapes, weights, {
    certain: options.place === 'close' ? 0.95 : 0.8,
    offsetDb: (shape, step) => levelOffset(problem, shape, step),
    usableHz: lowestUsable(bands, used),
  });
}

/** Bands as the likelihood needs them; all arrays over the bands in use. */
interface Problem {
  /** u of a band at f0 step 0: 36·log2(hz/15). */
  readonly bandStep: Int32Array;
  readonly floor: Float64Array;
  /** Soft-floored level minus the mean of the room, dB. */
  readonly levelDb: Float64Array;
  /** Inverse Cholesky factor of the covariance. */
  readonly whitening: Float64Array;
}

function placeOf(options: RolloffOptions): Place {
  const { place, positions = 1, sameModel = 1, upperHz = 500, lowerHz = 0 } = options;
  if (!(positions >= 1)) throw new RangeError(`positions must be at least 1, got ${positions}`);
  if (!(sameModel >= 1)) throw new RangeError(`sameModel must be at least 1, got ${sameModel}`);
  if (!(upperHz >= 60)) throw new RangeError(`upperHz must be at least 60, got ${upperHz}`);
  if (!(lowerHz >= 0)) throw new RangeError(`lowerHz must not be negative, got ${lowerHz}`);
  const sheet = options.sheetF3Hz;
  if (sheet !== undefined && !(sheet > 5 && sheet < 500)) {
    throw new RangeError(`sheetF3Hz must lie between 5 and 500, got ${sheet}`);
  }
  return { place, positions, sameModel };
}

function usedBands(bands: RolloffBands, { upperHz = 500, lowerHz = 0 }: RolloffOptions): number[] {
  return [...bands.hz.keys()].filter((k) => {
    const hz = bands.hz[k] ?? 0;
    return hz >= lowerHz && hz <= upperHz && Number.isFinite(bands.power[k]);
  });
}

function lowestUsable(bands: RolloffBands, used: readonly number[]): number {
  let lowest = Infinity;
  for (const k of [...used].reverse()) {
    if ((bands.marginDb[k] ?? 0) >= MARGIN_DB) lowest = bands.hz[k] ?? lowest;
  }
  return lowest;
}

function prepare(
  bands: RolloffBands,
  used: readonly number[],
  place: Place,
  coneOnly: boolean,
): Problem {
  const pick = (values: Float64Array): Float64Array =>
    Float64Array.from(used, (k) => values[k] ?? 0);
  const hz = pick(bands.hz);
  const reference = topOctavePower(hz, pick(bands.power), pick(bands.noisePower));
  const power = pick(bands.power).map((p) => Math.max(p, 0) / reference);
  const noise = pick(bands.noisePower).map((n) => n / reference);
  const lines = pick(bands.lines);
  const n = hz.length;
  const floor = noise.map((value) => SOFT_FLOOR + value);
  const covariance = residualCovariance(hz, place);
  if (coneOnly) {
    // Twice the interval: leak of the port and the room into the cone's field is only guessed.
    for (let i = 0; i < covariance.length; i++) covariance[i] = (covariance[i] ?? 0) * 4;
  }
  for (let i = 0; i < n; i++) {
    const signal = power[i] ?? 0;
    const own = noise[i] ?? 0;
    const m = lines[i] ?? 1;
    const variance = (2 * signal * own + own * own) / m + (own * own) / (3 * m);
    covariance[i * n + i] =
      (covariance[i * n + i] ?? 0) + (DB * DB * variance) / (signal + (floor[i] ?? 1)) ** 2;
  }
  return {
    bandStep: Int32Array.from(hz, (f) =>
      Math.round(STEPS_PER_OCTAVE * Math.log2(f / LOWEST_BAND_HZ)),
    ),
    floor,
    levelDb: hz.map(
      (f, i) => DB * Math.log((power[i] ?? 0) + (floor[i] ?? 1)) - residualMeanDb(f, place),
    ),
    whitening: whiteningMatrix(covariance, n),
  };
}

/** Mean level of the top octave in use (180 to 500 Hz for a whole reading) as a power. */
function topOctavePower(hz: Float64Array, power: Float64Array, noise: Float64Array): number {
  const count = Math.min(hz.length, Math.round(1.5 * BANDS_PER_OCTAVE));
  let sum = 0;
  for (let i = hz.length - count; i < hz.length; i++) {
    sum += Math.log(Math.max(power[i] ?? 0, noise[i] ?? 0, 1e-12));
  }
  return Math.exp(sum / count);
}

/** −½‖W(level − model)‖² + log prior, shape after shape, f0 ascending. */
function logPosteriors(
  problem: Problem,
  shapes: readonly BoxShape[],
  sheetF3Hz: number | undefined,
): Float64Array {
  const perShape = LAST_F0_STEP - FIRST_F0_STEP + 1;
  const logs = new Float64Array(shapes.length * perShape).fill(-Infinity);
  const n = problem.levelDb.length;
  const residual = new Float64Array(n);
  shapes.forEach((shape, s) => {
    for (let step = FIRST_F0_STEP; step <= LAST_F0_STEP; step++) {
      const f3 = LOWEST_BAND_HZ * 2 ** (step / STEPS_PER_OCTAVE) * shape.ratios[0];
      if (f3 < PRIOR_F3_HZ[0] || f3 > PRIOR_F3_HZ[1]) continue;
      fillResidual(residual, problem, shape, step);
      logs[s * perShape + step - FIRST_F0_STEP] =
        shape.logPrior +
        sheetLog(f3, sheetF3Hz) -
        0.5 * whitenedSquare(problem.whitening, residual);
    }
  });
  return logs;
}

/** A sheet is right to 15 % nine times in ten; else it says nothing. */
function sheetLog(f3: number, sheetF3Hz: number | undefined): number {
  if (sheetF3Hz === undefined) return 0;
  const z = Math.log(f3 / sheetF3Hz) / 0.15;
  const peak = 1 / (0.15 * Math.sqrt(2 * Math.PI));
  const flat = 1 / Math.log(PRIOR_F3_HZ[1] / PRIOR_F3_HZ[0]);
  return Math.log(SHEET_TRUST * peak * Math.exp(-0.5 * z * z) + (1 - SHEET_TRUST) * flat);
}

function fillResidual(
  residual: Float64Array,
  { bandStep, floor, levelDb }: Problem,
  shape: BoxShape,
  step: number,
): void {
  const { heard } = shape;
  for (let i = 0; i < residual.length; i++) {
    const power = heard[(bandStep[i] ?? 0) - step - LOWEST_STEP] ?? 0;
    residual[i] = (levelDb[i] ?? 0) - DB * Math.log(power + (floor[i] ?? 0));
  }
}

function whitenedSquare(whitening: Float64Array, residual: Float64Array): number {
  const n = residual.length;
  let total = 0;
  for (let row = 0; row < n; row++) {
    const base = row * n;
    let sum = 0;
    for (let column = 0; column <= row; column++) {
      sum += (whitening[base + column] ?? 0) * (residual[column] ?? 0);
    }
    total += sum * sum;
  }
  return total;
}

/** Posterior mean of the free level for one model: σ²·1ᵀC⁻¹r. */
function levelOffset(problem: Problem, shape: BoxShape, step: number): number {
  const n = problem.levelDb.length;
  const residual = new Float64Array(n);
  fillResidual(residual, problem, shape, step);
  let sum = 0;
  for (let row = 0; row < n; row++) {
    let ones = 0;
    let mine = 0;
    for (let column = 0; column <= row; column++) {
      const w = problem.whitening[row * n + column] ?? 0;
      ones += w;
      mine += w * (residual[column] ?? 0);
    }
    sum += ones * mine;
  }
  return LEVEL_VARIANCE * sum;
}

/** True for a refusal. */
export function isRefusal(fit: RolloffFit | RolloffRefusal): fit is RolloffRefusal {
  return 'refused' in fit;
}

export type { BoxKind, RolloffFit };
