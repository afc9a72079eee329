import { nextPowerOfTwo, passingSpectrum, realSignal } from '../fft/fft';
import { lowSpectrum } from './whole-spectrum';

/** Slow samples before the first one that its band limit may ring into, and as many at the end. */
export const ringing = 32;

const known = new WeakMap<Float64Array, Map<number, Float64Array>>();

/**
 * The signal at a rate `ratio` times lower, flat to half the new Nyquist frequency and faded by a
 * raised cosine to it; entry n stands at sample (n − ringing)·ratio. Sums keep their size. Kept
 * with the array, as roll-off and bass both start from it; neither may be changed afterwards.
 * `ratio` a power of two.
 */
export function slowSamples(samples: Float64Array, ratio: number): Float64Array {
  const kept = known.get(samples) ?? new Map<number, Float64Array>();
  known.set(samples, kept);
  const slow = kept.get(ratio) ?? slowDown(samples, ratio);
  kept.set(ratio, slow);
  return slow;
}

function slowDown(samples: Float64Array, ratio: number): Float64Array {
  const count = Math.ceil(samples.length / ratio) + 2 * ringing;
  if (ratio === 1) {
    const same = new Float64Array(count);
    same.set(samples, ringing);
    return same;
  }
  const size = nextPowerOfTwo(count) * ratio;
  const slowSize = size / ratio;
  const isWhole = size === nextPowerOfTwo(samples.length);
  const whole = isWhole ? lowSpectrum(samples, slowSize / 2 + 1) : passingSpectrum(samples, size);
  const spectrum = whole.slice(0, slowSize + 2);
  for (let k = 0; k <= slowSize / 2; k++) {
    const along = Math.max(0, (4 * k) / slowSize - 1);
    const gain = 0.5 * (1 + Math.cos(Math.PI * along));
    spectrum[2 * k] = gain * (spectrum[2 * k] ?? 0);
    spectrum[2 * k + 1] = gain * (spectrum[2 * k + 1] ?? 0);
  }
  const round = realSignal(spectrum, slowSize);
  const slow = new Float64Array(count);
  // What rings before the first sample comes round at the end.
  slow.set(round.subarray(slowSize - ringing));
  slow.set(round.subarray(0, count - ringing), ringing);
  return slow;
}
