/** `length` samples from index `from` on, zeros outside the signal; a view where that is enough. */
export function stretchOf(samples: Float64Array, from: number, length: number): Float64Array {
  if (from >= 0 && from + length <= samples.length) return samples.subarray(from, from + length);
  const piece = new Float64Array(length);
  const start = Math.max(from, 0);
  const end = Math.min(from + length, samples.length);
  if (end > start) piece.set(samples.subarray(start, end), start - from);
  return piece;
}
