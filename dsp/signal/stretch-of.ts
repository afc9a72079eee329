import type { Samples } from './samples';

/** `length` samples from index `from` on, zeros outside; a view where 64-bit samples hold them. */
export function stretchOf(samples: Samples, from: number, length: number): Float64Array {
  if (samples instanceof Float64Array && from >= 0 && from + length <= samples.length) {
    return samples.subarray(from, from + length);
  }
  const piece = new Float64Array(length);
  const start = Math.max(from, 0);
  const end = Math.min(from + length, samples.length);
  if (end > start) piece.set(samples.subarray(start, end), start - from);
  return piece;
}
