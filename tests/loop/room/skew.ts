const halfWidth = 24;

/**
 * Streaming resampler of one signal: `ratio` output samples for every input sample, a sinc under
 * a Hann window. Gives what is ready; the rest waits for more input.
 */
export function createSkew(ratio: number): (block: Float64Array) => Float64Array {
  if (ratio === 1) return (block) => block;
  let held = new Float64Array(halfWidth);
  /** Input index of held[0], and the next output's number. */
  let heldStart = -halfWidth;
  let produced = 0;
  return (block) => {
    const joined = new Float64Array(held.length + block.length);
    joined.set(held);
    joined.set(block, held.length);
    const output: number[] = [];
    for (;;) {
      const at = produced / ratio - heldStart;
      if (at + halfWidth >= joined.length) break;
      output.push(interpolate(joined, at));
      produced++;
    }
    const keepFrom = Math.floor(produced / ratio) - halfWidth - heldStart;
    held = joined.slice(Math.max(0, keepFrom));
    heldStart += Math.max(0, keepFrom);
    return Float64Array.from(output);
  };
}

function interpolate(signal: Float64Array, at: number): number {
  const first = Math.ceil(at - halfWidth);
  let sum = 0;
  for (let n = first; n < at + halfWidth; n++) {
    const t = n - at;
    const sinc = t === 0 ? 1 : Math.sin(Math.PI * t) / (Math.PI * t);
    sum += (signal[n] ?? 0) * sinc * (0.5 + 0.5 * Math.cos((Math.PI * t) / halfWidth));
  }
  return sum;
}
