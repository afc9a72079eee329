const criterionDb = 85;
const criterionSeconds = 8 * 3600;
const exchangeDb = 3;

/**
 * Share of a day's noise dose (1 is the whole of it) that `seconds` at an equivalent level of
 * `levelDbA` dB(A) give: seconds/(8 h/2^((L − 85)/3)). No level is too low to count. Throws
 * RangeError for a level that is not finite or seconds below 0. Source: NIOSH 98-126 (1998), 1.1.
 */
export function noiseDose(levelDbA: number, seconds: number): number {
  return seconds / secondsAllowed(levelDbA, seconds);
}

function secondsAllowed(levelDbA: number, seconds: number): number {
  if (!Number.isFinite(levelDbA)) throw new RangeError(`levelDbA must be finite, got ${levelDbA}`);
  if (!(seconds >= 0 && seconds < Infinity)) {
    throw new RangeError(`seconds must not be negative, got ${seconds}`);
  }
  return criterionSeconds / 2 ** ((levelDbA - criterionDb) / exchangeDb);
}
