import { checkBounds } from './clipping';
import type { Samples } from '../signal/samples';

/** Below this nothing is told apart from silence, dB re full scale. */
export const silenceDb = -200;

/**
 * Rms of samples[from … to) without their mean, dB re a constant 1; −200 for digital silence and
 * an empty stretch. Throws RangeError for bounds outside the samples.
 */
export function measureNoise(samples: Samples, from: number, to: number): number {
  checkBounds(samples, from, to);
  let sum = 0;
  let squares = 0;
  for (let n = from; n < to; n++) {
    const value = samples[n] ?? 0;
    sum += value;
    squares += value * value;
  }
  const count = Math.max(1, to - from);
  const power = squares / count - (sum / count) ** 2;
  return power > 1e-20 ? 10 * Math.log10(power) : silenceDb;
}
