import { nextPowerOfTwo, realSignal } from '../../dsp/fft/fft';
import { dbToAmplitude } from '../../dsp/level/decibels';
import { seededRandom } from '../../dsp/signal/random';

/** Rms of the noise at gain 0 dB, dB re full scale: that of a sweep of a take, whose peak is −12. */
export const climbRmsDb = -12 - 10 * Math.log10(2);

/** Noise a climb plays end to end. */
export interface ClimbNoise {
  readonly period: Float32Array;
  readonly lowHz: number;
  readonly highHz: number;
  /** Mean square of each bin of a transform of one period, at gain 0 dB. */
  readonly power: Float64Array;
}

/**
 * Periodic pink noise for a climb, about 0.7 s long: 40 Hz to 16 kHz, on subs 25 to 160 Hz, as loud
 * as a take's sweep at the same gain. An exponential sweep spends its energy as pink noise does, so
 * at one gain both give the room the same mean level. Peaks lie near −4 dB re full scale, never
 * above 0. Random phases: one transform, so that the screen is not held up.
 */
export function climbNoise(isSub: boolean, sampleRate: number): ClimbNoise {
  const [lowHz, highHz] = isSub ? [25, 160] : [40, 16_000];
  const size = nextPowerOfTwo(0.5 * sampleRate);
  const random = seededRandom(12);
  const spectrum = new Float64Array(size + 2);
  const first = Math.ceil((lowHz * size) / sampleRate);
  const last = Math.floor((highHz * size) / sampleRate);
  for (let k = first; k <= last; k++) {
    const phase = 2 * Math.PI * random();
    spectrum[2 * k] = Math.cos(phase) / Math.sqrt(k);
    spectrum[2 * k + 1] = Math.sin(phase) / Math.sqrt(k);
  }
  const noise = realSignal(spectrum, size);
  let energy = 0;
  let peak = 0;
  for (const x of noise) {
    energy += x * x;
    peak = Math.max(peak, Math.abs(x));
  }
  const gain = Math.min(dbToAmplitude(climbRmsDb) / Math.sqrt(energy / size), 1 / peak);
  const scale = (2 * gain ** 2) / size ** 2;
  const power = Float64Array.from({ length: size / 2 + 1 }, (_, k) => {
    return scale * ((spectrum[2 * k] ?? 0) ** 2 + (spectrum[2 * k + 1] ?? 0) ** 2);
  });
  return { period: Float32Array.from(noise, (x) => gain * x), lowHz, highHz, power };
}
