/** Response before zero delay: room for nearer speakers than the reference, and for noise. */
const preSeconds = 0.17;
/** Response after zero delay. */
const postSeconds = 1.36;

/** Samples of a response before its zero delay, and of the whole of it. */
export function responseLengths(sampleRate: number): { pre: number; whole: number } {
  const pre = Math.round(preSeconds * sampleRate);
  return { pre, whole: pre + Math.round(postSeconds * sampleRate) };
}
