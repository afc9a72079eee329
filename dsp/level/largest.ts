/** Largest magnitude among samples; 0 when there are none. */
export function largestMagnitude(samples: Float32Array | Float64Array): number {
  let largest = 0;
  for (let n = 0; n < samples.length; n++) {
    const value = Math.abs(samples[n] ?? 0);
    if (value > largest) largest = value;
  }
  return largest;
}
