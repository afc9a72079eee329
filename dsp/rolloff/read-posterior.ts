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
  /** 80 % quantile of f6, which the crossover rule uses. */
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
const NEGLIGIBLE = 1e-9;

/** Turns posterior weights (shape after shape, f0 ascending, sum 1) into a fit. */
export function readPosterior(
  shapes: readonly BoxShape[],
  weights: Float64Array,
  terms: ReadingTerms,
): RolloffFit {
  const f3Hz = frequencyQuantiles(shapes, weights, 0, terms.cellSteps);
  const f6Hz = frequencyQuantiles(shapes, weights, 1, terms.cellSteps);
  const f10Hz = frequencyQuantiles(shapes, weights, 2, terms.cellSteps);
  return {
    f3Hz,
    f6Hz,
    f10Hz,
    f6Upper80Hz: f6Hz.upper80,
    box: readBox(shapes, weights, terms.certain),
    curve: readCurve(shapes, weights),
    passbandDb: bestPassband(shapes, weights, terms),
    caution: readCaution(f6Hz, f10Hz, terms.usableHz),
    usableHz: terms.usableHz,
  };
}

function readCaution(f6: Quantiles, f10: Quantiles, usableHz: number): RolloffFit['caution'] {
  if (f6.low < LOWEST_BAND_HZ) return 'low';
  if (f10.low < usableHz && usableHz > 1.1 * LOWEST_BAND_HZ) return 'noise';
  return f6.high / f6.low > WIDE ? 'wide' : null;
}

interface FrequencyQuantiles extends Quantiles {
  readonly upper80: number;
}

/** Quantiles over log frequency; each model's mass is spread over its cell of the grid. */
function frequencyQuantiles(
  shapes: readonly BoxShape[],
  weights: Float64Array,
  which: 0 | 1 | 2,
  cellSteps: number,
): FrequencyQuantiles {
  const line = new MassLine(-3 * STEPS_PER_OCTAVE, 6 * STEPS_PER_OCTAVE, 0.125);
  shapes.forEach((shape, s) => {
    const shift = STEPS_PER_OCTAVE * Math.log2(shape.ratios[which]);
    for (let i = 0; i < MODELS_PER_SHAPE; i++) {
      const weight = weights[s * MODELS_PER_SHAPE + i] ?? 0;
      if (weight > NEGLIGIBLE) line.add(FIRST_F0_STEP + i + shift, cellSteps, weight);
    }
  });
  const at = (p: number): number => LOWEST_BAND_HZ * 2 ** (line.quantile(p) / STEPS_PER_OCTAVE);
  return { low: at(0.05), median: at(0.5), high: at(0.95), upper80: at(0.8) };
}

function readBox(
  shapes: readonly BoxShape[],
  weights: Float64Array,
  certain: number,
): RolloffFit['box'] {
  let closed = 0;
  shapes.forEach((shape, s) => {
    if (shape.kind !== 'closed') return;
    for (let i = 0; i < MODELS_PER_SHAPE; i++) closed += weights[s * MODELS_PER_SHAPE + i] ?? 0;
  });
  const probability = Math.min(1, Math.max(closed, 1 - closed));
  const likelier: BoxKind = closed > 0.5 ? 'closed' : 'vented';
  return { kind: probability > certain ? likelier : 'cannot tell', probability };
}

function readCurve(shapes: readonly BoxShape[], weights: Float64Array): RolloffFit['curve'] {
  const count = Math.floor((LAST_CURVE_STEP - FIRST_CURVE_STEP) / CURVE_STRIDE) + 1;
  const hz = new Float64Array(count);
  const medianDb = new Float64Array(count);
  const lowDb = new Float64Array(count);
  const highDb = new Float64Array(count);
  const tables = shapes.map(({ power }) => power.map((p) => 10 * Math.log10(p + 1e-9)));
  const line = new MassLine(-100, 20, 0.05);
  for (let c = 0; c < count; c++) {
    const curveStep = FIRST_CURVE_STEP + c * CURVE_STRIDE;
    line.clear();
    tables.forEach((table, s) => {
      for (let i = 0; i < MODELS_PER_SHAPE; i++) {
        const weight = weights[s * MODELS_PER_SHAPE + i] ?? 0;
        if (weight <= NEGLIGIBLE) continue;
        line.add(table[curveStep - FIRST_F0_STEP - i - LOWEST_STEP] ?? 0, 0.05, weight);
      }
    });
    hz[c] = LOWEST_BAND_HZ * 2 ** (curveStep / STEPS_PER_OCTAVE);
    medianDb[c] = line.quantile(0.5);
    lowDb[c] = line.quantile(0.05);
    highDb[c] = line.quantile(0.95);
  }
  return { hz, medianDb, lowDb, highDb };
}

function bestPassband(
  shapes: readonly BoxShape[],
  weights: Float64Array,
  terms: ReadingTerms,
): number {
  let best = 0;
  weights.forEach((weight, m) => {
    if (weight > (weights[best] ?? 0)) best = m;
  });
  const shape = shapes[Math.floor(best / MODELS_PER_SHAPE)];
  return shape ? terms.passbandDb(shape, FIRST_F0_STEP + (best % MODELS_PER_SHAPE)) : 0;
}
