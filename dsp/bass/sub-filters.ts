import { powerToDb } from '../level/decibels';
import { filterPower } from './filter-power';
import type { FilterSpec } from '../filter/analogue';

/** Family and order of a filter. */
export type FilterShape = Pick<FilterSpec, 'family' | 'order'>;

export interface SubLowPassTerms {
  /** Crossovers in force of all groups that hand bass to the subs; full range left out. */
  readonly crossoversHz: readonly number[];
  /** Those of the bed among them. */
  readonly bedCrossoversHz: readonly number[];
  /** Rising; empty where the processor has none. */
  readonly stepsHz: readonly number[];
  readonly canBeOff: boolean;
  readonly shape: FilterShape;
}

export interface SubLowPassChoice {
  /** Null for off. */
  readonly hz: number | null;
  /** What it takes away at the highest crossover, dB, 0 or more. */
  readonly costDb: number;
  /** True where even the highest step lies below the highest crossover of the bed: a gap opens. */
  readonly belowBed: boolean;
}

/** The LFE channel's own band ends here (ITU-R BS.775, from memory). */
const lfeHz = 120;
/** A low-pass may take so much away at a crossover, dB. */
const mostCostDb = 0.5;

/**
 * The sub low-pass that opens no gap: off where that can be, as every crossover has a low-pass of
 * its own; else the lowest step that is no lower than the highest bed crossover or LFE's 120 Hz
 * and takes at most 0.5 dB at the highest crossover; else the highest step. Common practice.
 * Throws RangeError for steps that do not rise from above 0.
 */
export function chooseSubLowPass(terms: SubLowPassTerms): SubLowPassChoice {
  const { crossoversHz, bedCrossoversHz, stepsHz, canBeOff, shape } = terms;
  checkSteps(stepsHz);
  const highest = Math.max(0, ...crossoversHz, ...bedCrossoversHz);
  const bed = Math.max(0, ...bedCrossoversHz);
  const last = stepsHz.at(-1);
  if (canBeOff || last === undefined) return { hz: null, costDb: 0, belowBed: false };
  const cost = (cutoffHz: number): number =>
    -powerToDb(filterPower({ ...shape, kind: 'low-pass', cutoffHz }, highest)) + 0;
  const hz =
    stepsHz.find((step) => step >= Math.max(bed, lfeHz) && cost(step) <= mostCostDb) ?? last;
  return { hz, costDb: cost(hz), belowBed: hz < bed };
}

export interface LowCutTerms {
  readonly box: 'closed' | 'vented' | 'cannot tell';
  /** Where the sub is 3 dB down: its median and the lower end of its interval. */
  readonly f3Hz: { readonly median: number; readonly low: number };
  readonly stepsHz: readonly number[];
  readonly shape: FilterShape;
}

export interface LowCutChoice {
  /** Null for off. */
  readonly hz: number | null;
  /** What it takes away at the sub's f3, dB, 0 or more. */
  readonly costDb: number;
  /**
   * 'closed': the air in the box holds the cone, no cut is needed. 'vented': below its tuning the
   * cone is not held. 'taken as vented': the box cannot be told. 'no step': all would cost bass.
   */
  readonly why: 'closed' | 'vented' | 'taken as vented' | 'no step';
}

/** A low cut may take so much away at the lowest f3 the sub may have, dB. */
const mostCutDb = 1;

/**
 * The low cut of a sub: off for a closed box; for a vented one, and one that cannot be told, the
 * highest step that takes at most 1 dB at the lower end of the interval of f3, so that the cone is
 * guarded below and nothing is lost above. Common practice. Throws RangeError for steps that do not
 * rise from above 0, or f3 that is not positive.
 */
export function chooseLowCut({ box, f3Hz, stepsHz, shape }: LowCutTerms): LowCutChoice {
  checkSteps(stepsHz);
  if (!(f3Hz.low > 0 && f3Hz.low <= f3Hz.median && f3Hz.median < Infinity)) {
    throw new RangeError(`f3Hz must be 0 < low ≤ median, got ${f3Hz.low}, ${f3Hz.median}`);
  }
  if (box === 'closed') return { hz: null, costDb: 0, why: 'closed' };
  const cost = (cutoffHz: number, at: number): number =>
    -powerToDb(filterPower({ ...shape, kind: 'high-pass', cutoffHz }, at)) + 0;
  const hz = stepsHz.findLast((step) => cost(step, f3Hz.low) <= mostCutDb) ?? null;
  if (hz === null) return { hz, costDb: 0, why: 'no step' };
  return {
    hz,
    costDb: cost(hz, f3Hz.median),
    why: box === 'vented' ? 'vented' : 'taken as vented',
  };
}

function checkSteps(stepsHz: readonly number[]): void {
  if (stepsHz.some((step, i) => !(step > (stepsHz[i - 1] ?? 0) && step < Infinity))) {
    throw new RangeError(`stepsHz must rise from above 0, got ${stepsHz.join(', ')}`);
  }
}
