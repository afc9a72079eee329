/** Mean of the squares of samples; 0 when there are none. */
export function meanSquare(samples: Float32Array | Float64Array): number {
  let sum = 0;
  for (const value of samples) sum += value * value;
  return sum / Math.max(1, samples.length);
}
