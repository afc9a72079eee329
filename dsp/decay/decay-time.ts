/** Which part of a decay a time is read from. */
export type DecayRange = 'EDT' | 'T20' | 'T30';

/** A decay time or why there is none. */
export interface DecayTime {
  /** Time in which 60 dB would be lost, s; null: cannot be told. */
  readonly seconds: number | null;
  /** 90 % interval of the room's own, of which one place is a sample; null without seconds. */
  readonly interval: readonly [number, number] | null;
  /** How far the decay bends, ‰: 1000(1 − r²); null without seconds. */
  readonly nonLinearity: number | null;
  /** Whether nothing speaks against the number. */
  readonly trusted: boolean;
  /** Why there is no number or why not to trust it, and what would settle it; null when trusted. */
  readonly sentence: string | null;
}

/** Part of the decay curve, dB re its whole, and how far the noise must lie below its start. */
export interface RangeLimits {
  readonly topDb: number;
  readonly bottomDb: number;
  /** The noise lies 10 dB below the bottom or lower. */
  readonly neededDb: number;
  /**
   * Non-linearity that chance gives a straight decay on average, ‰ times B·T, from the covariance
   * in fitDecay; null where a decay bends by nature and is not judged.
   */
  readonly chanceBend: number | null;
  /**
   * Standard deviation of ln(time) from place to place beyond chance: a small room is not diffuse,
   * and the direct sound starts the decay.
   */
  readonly scatter: number;
}

/**
 * Source: ISO 3382-1:2009, 5.3 and ISO 3382-2:2008, 6 (from memory); scatter: own simulation of
 * rooms of 25 to 100 m³, see tests/accuracy.
 */
export const rangeLimits: Readonly<Record<DecayRange, RangeLimits>> = {
  // The curve's very start is flat while a speaker's bass builds up.
  EDT: { topDb: -0.1, bottomDb: -10, neededDb: 20, chanceBend: null, scatter: 0.15 },
  T20: { topDb: -5, bottomDb: -25, neededDb: 35, chanceBend: 1800, scatter: 0.07 },
  T30: { topDb: -5, bottomDb: -35, neededDb: 45, chanceBend: 1000, scatter: 0.05 },
};

/** A time that cannot be told. */
export function untold(sentence: string): DecayTime {
  return { seconds: null, interval: null, nonLinearity: null, trusted: false, sentence };
}

/** The same number with a reason to distrust it; one that has a reason, or none at all, stays. */
export function distrust(time: DecayTime, sentence: string): DecayTime {
  return time.trusted ? { ...time, trusted: false, sentence } : time;
}
