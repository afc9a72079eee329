import type { Samples } from './samples';
import { newRoom } from './scratch';

/**
 * `length` samples from index `from` on, zeros outside; a view where 64-bit samples hold them, else
 * in what `room` gives.
 */
export function stretchOf(
  samples: Samples,
  from: number,
  length: number,
  room = newRoom,
): Float64Array {
  if (samples instanceof Float64Array && from >= 0 && from + length <= samples.length) {
    return samples.subarray(from, from + length);
  }
  const piece = room(length);
  const start = Math.min(Math.max(from, 0), from + length);
  const end = Math.max(Math.min(from + length, samples.length), start);
  piece.fill(0, 0, start - from);
  piece.set(samples.subarray(start, end), start - from);
  piece.fill(0, end - from);
  return piece;
}
