/** Mean of the squares of samples; 0 when there are none. */
export function meanSquare(samples: Float32Array | Float64Array): number {
  let sum = 0;
  for (let n = 0; n < samples.length; n++) sum += (samples[n] ?? 0) ** 2;
  return sum / Math.max(1, samples.length);
}
