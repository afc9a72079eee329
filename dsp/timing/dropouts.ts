import { checkBounds } from './clipping';
import type { Samples } from '../signal/samples';

/** A stretch of exact zeros in a capture that is otherwise never silent. */
export interface Dropout {
  readonly from: number;
  readonly length: number;
}

const shortest = 64;
/** So many samples on each side must be mostly other than zero. */
const beside = 256;
const leastSounding = 0.5;

/**
 * Runs of 64 or more exact zeros in samples[from … to) with sound or noise on both sides: buffers
 * that a recorder filled with nothing. Zeros at the very start and end of the samples, and quiet
 * stretches whose neighbourhood is mostly zeros too, are none. Throws RangeError for bounds outside
 * the samples. Common practice.
 */
export function findDropouts(samples: Samples, from: number, to: number): Dropout[] {
  checkBounds(samples, from, to);
  const dropouts: Dropout[] = [];
  let end = from;
  // No such run lies between two samples so far apart.
  for (let n = from; n < to; n = n < end ? end : n + shortest) {
    if (samples[n] !== 0) continue;
    let start = n;
    while (start > end && samples[start - 1] === 0) start--;
    end = n + 1;
    while (end < to && samples[end] === 0) end++;
    const length = end - start;
    if (length < shortest) continue;
    const before = sounding(samples, start - beside, start);
    const after = sounding(samples, end, end + beside);
    if (Math.min(before, after) >= leastSounding) dropouts.push({ from: start, length });
  }
  return dropouts;
}

/** Share of the samples that are not zero; 0 when the stretch leaves the capture. */
function sounding(samples: Samples, from: number, to: number): number {
  if (from < 0 || to > samples.length) return 0;
  let count = 0;
  for (let n = from; n < to; n++) if (samples[n] !== 0) count++;
  return count / (to - from);
}
