import type { Readings } from './reading';

/** Room for what changes from one take to the next. */
const margin = 1.1;

/**
 * How long a response must be left alone before the next sweep's may begin, from the slowest decay
 * of all speakers; null when a speaker that was heard has none, or nothing was heard.
 */
export function overlapSeconds(readings: Readings): number | null {
  const heard = readings.channels.filter(({ curves, decaySeconds }) => curves ?? decaySeconds);
  const decays = heard.map(({ decaySeconds }) => decaySeconds);
  const slowest = decays.reduce<number | null>(
    (most, one) => (most === null || one === null ? null : Math.max(most, one)),
    0,
  );
  return heard.length === 0 || slowest === null ? null : margin * slowest;
}
