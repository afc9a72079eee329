import type { LowestFrequency } from '../distortion/lowest-at-level';

/** What is known of one speaker that bass is to be taken from. */
export interface SpeakerLimits {
  readonly name: string;
  readonly f3Hz: number | null;
  /** 80 % quantile of f6. */
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
/** The measured rule: this many times the 80 % quantile of f6. */
const measuredFactor = 1.25;
const rounding = 1e-9;

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

/** Step by the measured rule: 1.25 × the worst 80 % quantile of f6; null when none is known. */
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
