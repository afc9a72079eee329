import type { LowestFrequency } from '../distortion/lowest-at-level';

/** What is known of one speaker that bass is to be taken from. */
export interface SpeakerLimits {
  readonly name: string;
  readonly f3Hz: number | null;
  /** The f6 the measured rule takes: an upper quantile, as crossoverF6Hz gives it. */
  readonly f6UpperHz: number | null;
  /** How low it may be asked to play at its level; null where that was not read. */
  readonly lowest: LowestFrequency | null;
}

/** The speaker and the reading that ask for the highest crossover. */
export interface Decider {
  readonly name: string;
  readonly by: 'roll-off' | 'distortion' | 'compression';
  readonly neededHz: number;
}

/** Common practice: so far above the roll-off; at 80 Hz when nothing is known. */
const practiceMarginHz = 10;
const unknownHz = 80;
/** The measured rule: this many times an upper quantile of f6. */
export const measuredFactor = 1.25;
/** Quantiles of the normal distribution at 80, 85 and 95 %. */
const [at80, at85, at95] = [0.8416, 1.0364, 1.6449];
const rounding = 1e-9;

/**
 * The 85 % quantile of f6 out of a fit's 80 and 95 % ones, log f6 taken as normal. In the tuning
 * rooms a quarter of the true f6 lay above the fit's 80 % quantile, a fifth above this. Throws
 * RangeError unless 0 < upper80Hz ≤ upper95Hz.
 */
export function crossoverF6Hz(upper80Hz: number, upper95Hz: number): number {
  if (!(upper80Hz > 0 && upper80Hz <= upper95Hz && upper95Hz < Infinity)) {
    throw new RangeError(`quantiles must rise from above 0, got ${upper80Hz}, ${upper95Hz}`);
  }
  return upper80Hz * (upper95Hz / upper80Hz) ** ((at85 - at80) / (at95 - at80));
}

/** First step at or above a frequency; null where the steps end below it. */
export function firstStepFrom(hz: number, stepsHz: readonly number[]): number | null {
  return stepsHz.find((step) => step >= hz - rounding) ?? null;
}

/** Step by the rule of practice: the worst f3 + 10 Hz, 80 Hz when none is known. */
export function practiceStep(
  speakers: readonly SpeakerLimits[],
  stepsHz: readonly number[],
): number | null {
  const known = speakers.flatMap(({ f3Hz }) => f3Hz ?? []);
  const wished = known.length === 0 ? unknownHz : Math.max(...known) + practiceMarginHz;
  return firstStepFrom(wished, stepsHz);
}

/** Step by the measured rule: 1.25 × the worst upper quantile of f6; null when none is known. */
export function measuredStep(
  speakers: readonly SpeakerLimits[],
  stepsHz: readonly number[],
): number | null {
  const known = speakers.flatMap(({ f6UpperHz }) => f6UpperHz ?? []);
  return known.length === 0 ? null : firstStepFrom(measuredFactor * Math.max(...known), stepsHz);
}

/**
 * Who asks for the highest crossover, by roll-off or by what the speaker can play at its level;
 * null when nothing is known. A limit of drive that only may be lower than what was read asks for
 * nothing.
 */
export function decider(speakers: readonly SpeakerLimits[]): Decider | null {
  const asked = speakers.flatMap(({ name, f6UpperHz, lowest }): Decider[] => [
    ...(f6UpperHz === null
      ? []
      : [{ name, by: 'roll-off' as const, neededHz: measuredFactor * f6UpperHz }]),
    ...(lowest?.kind === 'told' ? [{ name, by: lowest.decidedBy, neededHz: lowest.hz }] : []),
  ]);
  return asked.reduce<Decider | null>(
    (most, one) => (most === null || one.neededHz > most.neededHz ? one : most),
    null,
  );
}
