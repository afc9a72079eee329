/** A number with its 90 % interval. */
export interface Measure {
  readonly value: number;
  readonly interval: readonly [number, number];
}

/** The frequency above which a room's modes overlap, or why it cannot be told. */
export interface SchroederReading {
  /** Null: cannot be told. */
  readonly hz: number | null;
  /** 90 % interval; null without hz. */
  readonly interval: readonly [number, number] | null;
  /** Why there is no number and what would settle it; null when there is one. */
  readonly sentence: string | null;
}

/**
 * Schroeder frequency 2000·√(T/V) Hz of a room with decay time T in s and volume V in m³: above it
 * three modes or more overlap within the width of one. Errors of T and V, taken as independent, add
 * by squares on the log axis, halved by the root. Null with a sentence when T or V is null. Throws
 * RangeError for values that are not positive or lie outside their interval.
 * Source: Schroeder and Kuttruff, JASA 34 (1962); Schroeder, JASA 99 (1996) (from memory).
 */
export function schroederFrequency(
  decaySeconds: Measure | null,
  cubicMetres: Measure | null,
): SchroederReading {
  if (!cubicMetres)
    return none('the room’s volume is not known. Type the room’s size on the plan.');
  if (!decaySeconds) return none('the room’s decay time is not known. More level would settle it.');
  checkMeasure('decaySeconds', decaySeconds);
  checkMeasure('cubicMetres', cubicMetres);
  const hz = 2000 * Math.sqrt(decaySeconds.value / cubicMetres.value);
  const side = (end: 0 | 1): number => {
    const decay = Math.log(decaySeconds.interval[end] / decaySeconds.value);
    const volume = Math.log(cubicMetres.interval[end === 0 ? 1 : 0] / cubicMetres.value);
    return Math.hypot(decay, volume) / 2;
  };
  return { hz, interval: [hz * Math.exp(-side(0)), hz * Math.exp(side(1))], sentence: null };
}

function none(why: string): SchroederReading {
  return { hz: null, interval: null, sentence: `No Schroeder frequency: ${why}` };
}

function checkMeasure(name: string, { value, interval: [low, high] }: Measure): void {
  if (!(low > 0 && low <= value && value <= high && high < Infinity)) {
    throw new RangeError(
      `${name} must be positive and in its interval, got ${low}, ${value}, ${high}`,
    );
  }
}
