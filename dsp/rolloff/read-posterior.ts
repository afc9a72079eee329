import {
  FIRST_CURVE_STEP,
  FIRST_F0_STEP,
  LAST_CURVE_STEP,
  LOWEST_STEP,
  STEPS_PER_OCTAVE,
  MODELS_PER_SHAPE,
  type BoxShape,
} from './box-models';
import type { BoxKind } from './box-families';
import { MassLine, type Quantiles } from './posterior';
import { LOWEST_BAND_HZ } from './rolloff-bands';

/** Roll-off with its uncertainty. Frequencies in Hz; low and high are the 5 and 95 % quantiles. */
export interface RolloffFit {
  readonly f3Hz: Quantiles;
  readonly f6Hz: Quantiles;
  readonly f10Hz: Quantiles;
  /** 80 % quantile of f6, from which and the 95 % one the crossover rule’s is taken. */
  readonly f6Upper80Hz: number;
  readonly box: {
    readonly kind: BoxKind | 'cannot tell';
    /** Posterior probability of the likelier kind, told or not. */
    readonly probability: number;
  };
  /** Own response without the room re its passband, 10 to 500 Hz, 18 points per octave. */
  readonly curve: {
    readonly hz: Float64Array;
    readonly medianDb: Float64Array;
    readonly lowDb: Float64Array;
    readonly highDb: Float64Array;
  };
  /** Level of the passband re the reference of the bands, dB: add to the curve to lay it on data. */
  readonly passbandDb: number;
  /**
   * What to say beside the numbers. 'wide': the 90 % interval of f6 spans more than a factor 3.
   * 'noise': the lower ends lie where noise hides the speaker. 'low': it reaches below the bands.
   */
  readonly caution: 'wide' | 'noise' | 'low' | null;
  /** Lowest band 6 dB above the noise, Hz. */
  readonly usableHz: number;
}

export interface ReadingTerms {
  /** Steps of f0 one weighted model stands for. */
  readonly cellSteps: number;
  /** Probability above which the box type is told. */
  readonly certain: number;
  readonly passbandDb: (shape: BoxShape, step: number) => number;
  readonly usableHz: number;
}

const WIDE = 3;
const CURVE_STRIDE = 2;
/** Models of less weight are left out. */
const NEGLIGIBLE = 1e-6;
const LOWEST_DB = -100;
const HIGHEST_DB = 20;
const CURVE_CELL_DB = 0.1;

interface WeightedModel {
  readonly shape: BoxShape;
  readonly step: number;
  readonly weight: number;
}

/** Turns posterior weights (shape after shape, f0 ascending, sum 1) into a fit. */
export function readPosterior(
  shapes: readonly BoxShape[],
  weights: Float64Array,
  terms: ReadingTerms,
): RolloffFit {
  const models = weightyModels(shapes, weights);
  const f3Hz = frequencyQuantiles(models, 0, terms.cellSteps);
  const { upper80, ...f6Hz } = frequencyQuantiles(models, 1, terms.cellSteps);
  const f10Hz = frequencyQuantiles(models, 2, terms.cellSteps);
  return {
    f3Hz: { low: f3Hz.low, median: f3Hz.median, high: f3Hz.high },
    f6Hz,
    f10Hz: { low: f10Hz.low, median: f10Hz.median, high: f10Hz.high },
    f6Upper80Hz: upper80,
    box: readBox(models, terms.certain),
    curve: readCurve(models),
    passbandDb: likeliestPassband(models, terms),
    caution: cautionOf(f6Hz, f10Hz, terms.usableHz),
    usableHz: terms.usableHz,
  };
}

function weightyModels(shapes: readonly BoxShape[], weights: Float64Array): WeightedModel[] {
  const models: WeightedModel[] = [];
  for (const [s, shape] of shapes.entries()) {
    for (let i = 0; i < MODELS_PER_SHAPE; i++) {
      const weight = weights[s * MODELS_PER_SHAPE + i] ?? 0;
      if (weight > NEGLIGIBLE) models.push({ shape, step: FIRST_F0_STEP + i, weight });
    }
  }
  return models;
}

/** What to say beside intervals of f6 and f10; see RolloffFit. */
export function cautionOf(f6: Quantiles, f10: Quantiles, usableHz: number): RolloffFit['caution'] {
  if (f6.low < LOWEST_BAND_HZ) return 'low';
  if (f10.low < usableHz && usableHz > 1.1 * LOWEST_BAND_HZ) return 'noise';
  return f6.high / f6.low > WIDE ? 'wide' : null;
}

interface FrequencyQuantiles extends Quantiles {
  readonly upper80: number;
}

/** Quantiles over log frequency; each model's mass is spread over its cell of the grid. */
function frequencyQuantiles(
  models: readonly WeightedModel[],
  which: 0 | 1 | 2,
  cellSteps: number,
): FrequencyQuantiles {
  const line = new MassLine(-3 * STEPS_PER_OCTAVE, 6 * STEPS_PER_OCTAVE, 0.125);
  for (const { shape, step, weight } of models) {
    line.add(step + STEPS_PER_OCTAVE * Math.log2(shape.ratios[which]), cellSteps, weight);
  }
  const [low = 0, median = 0, upper80 = 0, high = 0] = line
    .quantiles([0.05, 0.5, 0.8, 0.95])
    .map((step) => LOWEST_BAND_HZ * 2 ** (step / STEPS_PER_OCTAVE));
  return { low, median, high, upper80 };
}

function readBox(models: readonly WeightedModel[], certain: number): RolloffFit['box'] {
  let closed = 0;
  let all = 0;
  for (const { shape, weight } of models) {
    all += weight;
    if (shape.kind === 'closed') closed += weight;
  }
  const probability = Math.max(closed, all - closed) / all;
  const likelier: BoxKind = closed > all - closed ? 'closed' : 'vented';
  return { kind: probability > certain ? likelier : 'cannot tell', probability };
}

/** Quantiles of the level at each frequency of the curve. */
function readCurve(models: readonly WeightedModel[]): RolloffFit['curve'] {
  const count = Math.floor((LAST_CURVE_STEP - FIRST_CURVE_STEP) / CURVE_STRIDE) + 1;
  const hz = new Float64Array(count);
  const medianDb = new Float64Array(count);
  const lowDb = new Float64Array(count);
  const highDb = new Float64Array(count);
  const line = new MassLine(LOWEST_DB, HIGHEST_DB, CURVE_CELL_DB);
  const shapes = [...new Set(models.map(({ shape }) => shape))];
  const span = shapes[0]?.levelDb.length ?? 0;
  const levels = new Float64Array(span * shapes.length);
  for (const [s, { levelDb }] of shapes.entries()) levels.set(levelDb, s * span);
  const places = new Int32Array(models.length);
  const weights = new Float64Array(models.length);
  let at = 0;
  // Models come shape after shape.
  for (const [m, { shape, step, weight }] of models.entries()) {
    if (shape !== shapes[at]) at = shapes.indexOf(shape);
    places[m] = span * at - step;
    weights[m] = weight;
  }
  for (let c = 0; c < count; c++) {
    const curveStep = FIRST_CURVE_STEP + c * CURVE_STRIDE;
    line.clear();
    line.addPoints(levels, places, curveStep - LOWEST_STEP, weights);
    const [low = 0, median = 0, high = 0] = line.quantiles([0.05, 0.5, 0.95]);
    hz[c] = LOWEST_BAND_HZ * 2 ** (curveStep / STEPS_PER_OCTAVE);
    medianDb[c] = median;
    lowDb[c] = low;
    highDb[c] = high;
  }
  return { hz, medianDb, lowDb, highDb };
}

function likeliestPassband(models: readonly WeightedModel[], terms: ReadingTerms): number {
  let best: WeightedModel | null = null;
  for (const one of models) if (!best || one.weight > best.weight) best = one;
  return best ? terms.passbandDb(best.shape, best.step) : 0;
}
