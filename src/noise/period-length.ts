import { nextPowerOfTwo } from '../../dsp/fft/fft';

/** Long enough for a room to die away in, and for bins that part the bass. */
const leastSeconds = 1.3;

/** Samples of a period of noise: the next power of two above 1.3 s; 2^16 at 44.1 and 48 kHz. */
export function periodLength(sampleRate: number): number {
  return nextPowerOfTwo(leastSeconds * sampleRate);
}
