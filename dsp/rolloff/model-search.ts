import {
  FIRST_F0_STEP,
  LAST_F0_STEP,
  LOWEST_STEP,
  MEAN_STEPS,
  MODELS_PER_SHAPE,
  STEPS_PER_BAND,
  STEPS_PER_OCTAVE,
  type BoxShape,
} from './box-models';
import { DB, type FitProblem } from './fit-problem';
import { LOWEST_BAND_HZ } from './rolloff-bands';
import { LEVEL_VARIANCE } from './level-variance';
import { SEAT_EARLY } from './seat-levels';
import { lanes, whitenedSquares } from './whitened-squares';

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
const meanSteps = MEAN_STEPS;
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
  const lastStep = problem.toStep[problem.toStep.length - 1] ?? 0;
  const highestHz = LOWEST_BAND_HZ * 2 ** (lastStep / STEPS_PER_OCTAVE);
  const highest = Math.min(PRIOR_F3_HZ[1], PASSBAND_IN_VIEW * highestHz);
  const residuals = new Float64Array(lanes * problem.levelDb.length);
  const squares = new Float64Array(lanes);
  const places = new Int32Array(lanes);
  const priors = new Float64Array(lanes);
  let filled = 0;
  let best = -Infinity;
  const flush = (): void => {
    whitenedSquares(problem.whitening, residuals, squares);
    for (let lane = 0; lane < filled; lane++) {
      const log = (priors[lane] ?? 0) - 0.5 * (squares[lane] ?? 0);
      logs[places[lane] ?? 0] = log;
      if (log > best) best = log;
    }
    filled = 0;
  };
  const compute = (shape: BoxShape, s: number, step: number): void => {
    const f3 = LOWEST_BAND_HZ * 2 ** (step / STEPS_PER_OCTAVE) * shape.ratios[0];
    if (f3 < PRIOR_F3_HZ[0] || f3 > highest) return;
    fillResiduals(problem, shape, step, residuals, filled);
    places[filled] = s * MODELS_PER_SHAPE + step - FIRST_F0_STEP;
    priors[filled] = shape.logPrior + sheetLog(f3, sheetF3Hz);
    filled++;
    if (filled === lanes) flush();
  };
  for (const [s, shape] of shapes.entries()) {
    for (let step = FIRST_F0_STEP; step <= LAST_F0_STEP; step += STEPS_PER_BAND) {
      compute(shape, s, step);
    }
  }
  flush();
  if (!fine) return { logs, cellSteps: STEPS_PER_BAND };
  const coarse = logs.slice();
  const counts = (s: number, step: number): boolean =>
    (coarse[s * MODELS_PER_SHAPE + step - FIRST_F0_STEP] ?? -Infinity) > best - NEGLIGIBLE;
  for (const [s, shape] of shapes.entries()) {
    for (let step = FIRST_F0_STEP; step + STEPS_PER_BAND <= LAST_F0_STEP; step += STEPS_PER_BAND) {
      if (!counts(s, step) && !counts(s, step + STEPS_PER_BAND)) continue;
      for (let i = 1; i < STEPS_PER_BAND; i++) compute(shape, s, step + i);
    }
  }
  flush();
  return { logs, cellSteps: 1 };
}

/** Posterior mean of the free level for one model, dB: σ²·1ᵀC⁻¹r. */
export function freeLevelDb(problem: FitProblem, shape: BoxShape, step: number): number {
  const { whitening, ones } = problem;
  const n = ones.length;
  const residual = new Float64Array(n);
  for (let i = 0; i < n; i++) residual[i] = residualAt(problem, shape, step, i);
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
  { heardSum, early: { power: table } }: BoxShape,
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

/** Writes a model's residuals into its lane; see residualAt. */
function fillResiduals(
  { fromStep, toStep, early, floor, levelDb }: FitProblem,
  { heardSum, means, early: earlyLevels }: BoxShape,
  step: number,
  residuals: Float64Array,
  lane: number,
): void {
  const count = levelDb.length;
  const whole = fromStep.length;
  const shift = step + lowestStep;
  const tableRow = ((step - firstStep) / stride) * earlyEntries;
  for (let row = 0; row < count; row++) {
    let nepers: number;
    const own = floor[row] ?? 0;
    const from = fromStep[row] ?? 0;
    const to = toStep[row] ?? 0;
    if (row >= whole) {
      const at = tableRow + (early[row - whole] ?? 0);
      nepers = raisedLog(earlyLevels.power[at] ?? 0, earlyLevels.nepers[at] ?? 0, own);
    } else if (to - from === meanSteps) {
      nepers = raisedLog(means.power[to - shift] ?? 0, means.nepers[to - shift] ?? 0, own);
    } else {
      const sum = (heardSum[to - shift] ?? 0) - (heardSum[from - shift - stride] ?? 0);
      nepers = Math.log((sum * stride) / (to - from + stride) + own);
    }
    residuals[lanes * row + lane] = (levelDb[row] ?? 0) - decibels * nepers;
  }
}

/**
 * ln(power + floor), given ln(power), to 10⁻¹⁴: a floor below a quarter of the power raises it by
 * twice the inverse hyperbolic tangent of floor/(2 power + floor), of which few terms count.
 */
function raisedLog(power: number, nepers: number, floor: number): number {
  if (4 * floor >= power) return Math.log(power + floor);
  const z = floor / (2 * power + floor);
  const y = z * z;
  const tail = 1 / 7 + y * (1 / 9 + y * (1 / 11 + y * (1 / 13)));
  return nepers + 2 * z * (1 + y * (1 / 3 + y * (1 / 5 + y * tail)));
}

function whitenedRow(whitening: Float64Array, vector: Float64Array, row: number): number {
  const base = row * vector.length;
  let sum = 0;
  for (let column = 0; column <= row; column++) {
    sum += (whitening[base + column] ?? 0) * (vector[column] ?? 0);
  }
  return sum;
}
