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
  for (let n = from; n < to; n++) {
    if (samples[n] !== 0) continue;
    const start = n;
    while (n + 1 < to && samples[n + 1] === 0) n++;
    const length = n - start + 1;
    if (length < shortest) continue;
    const before = sounding(samples, start - beside, start);
    const after = sounding(samples, n + 1, n + 1 + beside);
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
