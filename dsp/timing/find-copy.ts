import type { Samples } from '../signal/samples';

const leastRun = 32;

/**
 * First place in capture[from … to) from which on samples are exactly those `lag` samples before,
 * for min(lag, 32) samples or more that are not all equal: a buffer that a recorder wrote twice.
 * Null when there is none. Throws RangeError for a lag that is not whole and positive.
 */
export function findCopy(capture: Samples, from: number, to: number, lag: number): number | null {
  if (!Number.isInteger(lag) || lag < 1) {
    throw new RangeError(`lag must be whole and positive, got ${lag}`);
  }
  const least = Math.min(lag, leastRun);
  let run = 0;
  let varied = 0;
  for (let n = Math.max(from, lag); n < Math.min(to, capture.length); n++) {
    if (capture[n] !== capture[n - lag]) {
      run = 0;
      varied = 0;
      continue;
    }
    run++;
    if (capture[n] !== capture[n - 1]) varied++;
    if (run >= least && varied >= least / 4) return n - run + 1;
  }
  return null;
}
