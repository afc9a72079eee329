/** The noise is read in so much of a response before an arrival, or in its end. */
const noiseSeconds = 0.1;
const leastSeconds = 0.002;

export type Stretch = readonly [from: number, to: number];

/**
 * Stretches of a response of `length` samples that hold noise only: up to 100 ms before what is
 * `clear` seconds before the peak, and its last 100 ms; the first one first, each only if there is
 * room for it.
 */
export function noiseStretches(
  length: number,
  peak: number,
  sampleRate: number,
  clear: number,
): Stretch[] {
  const span = Math.round(noiseSeconds * sampleRate);
  const end = peak - Math.round(clear * sampleRate);
  const before: Stretch = [Math.max(0, end - span), end];
  const after: Stretch = [length - span, length];
  const stretches = after[0] > peak ? [before, after] : [before];
  return stretches.filter(([from, to]) => to - from >= leastSeconds * sampleRate);
}

/** Mean square of a stretch. */
export function meanSquare(samples: Float64Array, [from, to]: Stretch): number {
  let sum = 0;
  for (let n = from; n < to; n++) sum += (samples[n] ?? 0) ** 2;
  return sum / Math.max(1, to - from);
}
