import {
  FIRST_F0_STEP,
  LAST_F0_STEP,
  LOWEST_STEP,
  MODELS_PER_SHAPE,
  STEPS_PER_BAND,
  STEPS_PER_OCTAVE,
  type BoxShape,
} from './box-models';
import { DB, type FitProblem } from './fit-problem';
import { LOWEST_BAND_HZ } from './rolloff-bands';
import { LEVEL_VARIANCE } from './level-variance';
import { SEAT_EARLY } from './seat-levels';

/** Log posteriors of all models, shape after shape, f0 ascending; −Infinity where not needed. */
export interface SearchResult {
  readonly logs: Float64Array;
  /** Steps of f0 one computed model stands for. */
  readonly cellSteps: number;
}

/** Close at hand for the innermost loop. */
const stride = STEPS_PER_BAND;
const lowestStep = LOWEST_STEP;
const firstStep = FIRST_F0_STEP;
const earlyEntries = SEAT_EARLY;
const decibels = DB;
/** f3 is taken as evenly likely, per octave, between these limits, or up to 0.7 of the highest band. */
const PRIOR_F3_HZ = [14, 200] as const;
const PASSBAND_IN_VIEW = 0.7;
const SHEET_TRUST = 0.9;
/** Models this far below the best in log posterior do not count. */
const NEGLIGIBLE = 20;

/**
 * −½‖W(level − model)‖² + log prior. Every third f0 first (6 %, fine enough in a room); with
 * `fine`, the steps between wherever a neighbour counts.
 */
export function searchModels(
  problem: FitProblem,
  shapes: readonly BoxShape[],
  sheetF3Hz: number | null,
  fine: boolean,
): SearchResult {
  const logs = new Float64Array(shapes.length * MODELS_PER_SHAPE).fill(-Infinity);
  const residual = new Float64Array(problem.levelDb.length);
  const lastStep = problem.toStep[problem.toStep.length - 1] ?? 0;
  const highestHz = LOWEST_BAND_HZ * 2 ** (lastStep / STEPS_PER_OCTAVE);
  const highest = Math.min(PRIOR_F3_HZ[1], PASSBAND_IN_VIEW * highestHz);
  let best = -Infinity;
  const compute = (shape: BoxShape, s: number, step: number): void => {
    const f3 = LOWEST_BAND_HZ * 2 ** (step / STEPS_PER_OCTAVE) * shape.ratios[0];
    if (f3 < PRIOR_F3_HZ[0] || f3 > highest) return;
    const prior = shape.logPrior + sheetLog(f3, sheetF3Hz);
    const limit = 2 * (prior - best + NEGLIGIBLE);
    const log = prior - 0.5 * whitenedSquare(problem, shape, step, residual, limit);
    logs[s * MODELS_PER_SHAPE + step - FIRST_F0_STEP] = log;
    best = Math.max(best, log);
  };
  // Coarse first: what comes close to the best early on cuts the rest short.
  for (const offset of [0, 2, 1, 3]) {
    const from = FIRST_F0_STEP + offset * STEPS_PER_BAND;
    shapes.forEach((shape, s) => {
      for (let step = from; step <= LAST_F0_STEP; step += 4 * STEPS_PER_BAND) {
        compute(shape, s, step);
      }
    });
  }
  if (!fine) return { logs, cellSteps: STEPS_PER_BAND };
  const counts = (s: number, step: number): boolean =>
    (logs[s * MODELS_PER_SHAPE + step - FIRST_F0_STEP] ?? -Infinity) > best - NEGLIGIBLE;
  shapes.forEach((shape, s) => {
    for (let step = FIRST_F0_STEP; step + STEPS_PER_BAND <= LAST_F0_STEP; step += STEPS_PER_BAND) {
      if (!counts(s, step) && !counts(s, step + STEPS_PER_BAND)) continue;
      for (let i = 1; i < STEPS_PER_BAND; i++) compute(shape, s, step + i);
    }
  });
  return { logs, cellSteps: 1 };
}

/** Posterior mean of the free level for one model, dB: σ²·1ᵀC⁻¹r. */
export function freeLevelDb(problem: FitProblem, shape: BoxShape, step: number): number {
  const { whitening, ones } = problem;
  const n = ones.length;
  const residual = Float64Array.from(ones, (_, i) => residualAt(problem, shape, step, i));
  let sum = 0;
  for (let row = 0; row < n; row++) {
    sum += whitenedRow(whitening, ones, row) * whitenedRow(whitening, residual, row);
  }
  return LEVEL_VARIANCE * sum;
}

/** A sheet is right to 15 % nine times in ten; else it says nothing. */
function sheetLog(f3: number, sheetF3Hz: number | null): number {
  if (sheetF3Hz === null) return 0;
  const z = Math.log(f3 / sheetF3Hz) / 0.15;
  const peak = 1 / (0.15 * Math.sqrt(2 * Math.PI));
  const flat = 1 / Math.log(PRIOR_F3_HZ[1] / PRIOR_F3_HZ[0]);
  return Math.log(SHEET_TRUST * peak * Math.exp(-0.5 * z * z) + (1 - SHEET_TRUST) * flat);
}

/** Level of the data less that of a model, dB, at one entry. */
function residualAt(
  { fromStep, toStep, early, floor, levelDb }: FitProblem,
  { heardSum, early: table }: BoxShape,
  step: number,
  entry: number,
): number {
  let power: number;
  if (entry < fromStep.length) {
    const shift = step + lowestStep;
    const from = fromStep[entry] ?? 0;
    const to = toStep[entry] ?? 0;
    const sum = (heardSum[to - shift] ?? 0) - (heardSum[from - shift - stride] ?? 0);
    power = (sum * stride) / (to - from + stride);
  } else {
    const row = ((step - firstStep) / stride) * earlyEntries;
    power = table[row + (early[entry - fromStep.length] ?? 0)] ?? 0;
  }
  return (levelDb[entry] ?? 0) - decibels * Math.log(power + (floor[entry] ?? 0));
}

/** ‖W r‖² of a model, or Infinity as soon as it exceeds `limit`; `residual` is room for r. */
function whitenedSquare(
  problem: FitProblem,
  shape: BoxShape,
  step: number,
  residual: Float64Array,
  limit: number,
): number {
  let total = 0;
  for (let row = 0; row < residual.length; row++) {
    residual[row] = residualAt(problem, shape, step, row);
    const value = whitenedRow(problem.whitening, residual, row);
    total += value * value;
    if (total > limit) return Infinity;
  }
  return total;
}

function whitenedRow(whitening: Float64Array, vector: Float64Array, row: number): number {
  const base = row * vector.length;
  let sum = 0;
  for (let column = 0; column <= row; column++) {
    sum += (whitening[base + column] ?? 0) * (vector[column] ?? 0);
  }
  return sum;
}
