/**
 * Fades the ends of a signal in place with halves of a raised cosine, ½(1 − cos(π(n + ½)/N)).
 * Lengths in samples; together no longer than the signal, else RangeError.
 */
export function fadeEnds(signal: Float64Array, fadeIn: number, fadeOut: number): void {
  for (const fade of [fadeIn, fadeOut]) {
    if (!Number.isInteger(fade) || fade < 0 || fadeIn + fadeOut > signal.length) {
      throw new RangeError(
        `fades must fit into ${signal.length} samples, got ${fadeIn}, ${fadeOut}`,
      );
    }
  }
  const last = signal.length - 1;
  for (let n = 0; n < fadeIn; n++) signal[n] = (signal[n] ?? 0) * fadeGain(n, fadeIn);
  for (let n = 0; n < fadeOut; n++)
    signal[last - n] = (signal[last - n] ?? 0) * fadeGain(n, fadeOut);
}

/** Gain of half a raised cosine of `length` samples at its (fractional) sample n, from 0 on. */
export function fadeGain(n: number, length: number): number {
  return 0.5 * (1 - Math.cos((Math.PI * (n + 0.5)) / length));
}
