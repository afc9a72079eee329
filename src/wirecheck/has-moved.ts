import type { ImpulseResponse } from '../../dsp/response/impulse-response';
import type { HeardBurst } from './hear-bursts';

const binSeconds = 0.0005;
/** How far a burst may have been shifted, and how much of its response is looked at, seconds. */
const reachSeconds = 0.25;
const beforeSeconds = 0.05;
const afterSeconds = 0.15;
/** A shift of fewer bins is none: the shortest buffer lasts longer. */
const leastBins = 3;
/** A burst counts when its strongest moment stands so far over the middle of all, power. */
const leastRise = 100;
/** The shift must fit better than none by this. */
const clearly = 1.05;

/**
 * Whether a burst that sounded twice came later or earlier the second time by more than 1 ms, its
 * room being the same: audio was lost, or put in, between. False when either is weak. `delay` is
 * that of the audio path, seconds.
 */
export function hasMoved(first: HeardBurst, again: HeardBurst, delay: number): boolean {
  const one = envelopeOf(first.response, delay - beforeSeconds, beforeSeconds + afterSeconds);
  const other = envelopeOf(
    again.response,
    delay - beforeSeconds - reachSeconds,
    beforeSeconds + afterSeconds + 2 * reachSeconds,
  );
  if (!isClear(one) || !isClear(other)) return false;
  const reach = Math.round(reachSeconds / binSeconds);
  const still = likeness(one, other, reach);
  let [best, most] = [reach, still];
  for (let at = 0; at <= 2 * reach; at++) {
    const value = likeness(one, other, at);
    if (value > most) [best, most] = [at, value];
  }
  return Math.abs(best - reach) >= leastBins && most > clearly * still;
}

/** Rms in bins from a moment on, without what all of them share; 0 beyond the response. */
function envelopeOf(
  { samples, sampleRate, zeroIndex }: ImpulseResponse,
  fromSeconds: number,
  seconds: number,
): Float64Array {
  const width = binSeconds * sampleRate;
  const start = zeroIndex + fromSeconds * sampleRate;
  return Float64Array.from({ length: Math.round(seconds / binSeconds) }, (_, bin) => {
    const [from, to] = [Math.round(start + bin * width), Math.round(start + (bin + 1) * width)];
    let sum = 0;
    for (let n = Math.max(0, from); n < Math.min(to, samples.length); n++) {
      sum += (samples[n] ?? 0) ** 2;
    }
    return Math.sqrt(sum / Math.max(1, to - from));
  });
}

function isClear(envelope: Float64Array): boolean {
  const sorted = envelope.slice().sort();
  const middle = sorted[sorted.length >> 1] ?? 0;
  return (sorted.at(-1) ?? 0) ** 2 >= leastRise * middle ** 2;
}

function likeness(one: Float64Array, other: Float64Array, at: number): number {
  return one.reduce((sum, value, n) => sum + value * (other[at + n] ?? 0), 0);
}
