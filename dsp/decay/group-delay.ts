import { nextPowerOfTwo, realSpectrum } from '../fft/fft';
import type { ImpulseResponse } from '../response/impulse-response';
import { powerSpectrum } from '../response/power-spectrum';
import { binMean } from './bin-mean';
import { clearOfNoise } from './clear-of-noise';
import { windowResponse, type WindowOptions } from './window-response';

export interface GroupDelayOptions extends WindowOptions {
  /** Steady noise that went through the same deconvolution, or null. */
  readonly noise: ImpulseResponse | null;
  /** What the delay is told from, s after zero delay; default 0. The window stands round it too. */
  readonly arrivalSeconds?: number;
  /** Mean over 1/fraction octave, weighted by power; left out: none. */
  readonly fraction?: number;
}

/** Bins lie at most this far apart. */
const spacingHz = 1;

/**
 * Group delay −dφ/dω of a response at frequencies hz, s after the arrival, by
 * τ = Re{F[t·h] F[h]*}/|F[h]|², which needs no unwrapping; smoothed, both sums are over the band,
 * so that dips, where the delay is wild and nothing is heard, count for little. Null where the
 * response stands less than 10 dB over the noise, or nothing is. A short window shows the speaker,
 * a long one the room too. Throws RangeError for spans or a fraction that are not positive.
 * Source: Oppenheim and Schafer, Discrete-Time Signal Processing (from memory).
 */
export function groupDelay(
  ir: ImpulseResponse,
  hz: ArrayLike<number>,
  options: GroupDelayOptions,
): (number | null)[] {
  const { noise, arrivalSeconds = 0, fraction } = options;
  const heard = windowResponse(ir, arrivalSeconds, options);
  const { samples, sampleRate, zeroIndex } = heard;
  const origin = zeroIndex + arrivalSeconds * sampleRate;
  const size = nextPowerOfTwo(Math.max(samples.length, sampleRate / spacingHz));
  const spectrum = realSpectrum(samples, size);
  const moments = realSpectrum(
    samples.map((value, n) => value * (n - origin)),
    size,
  );
  const power = new Float64Array(size / 2 + 1);
  const weighted = new Float64Array(size / 2 + 1);
  for (let k = 0; k <= size / 2; k++) {
    const re = spectrum[2 * k] ?? 0;
    const im = spectrum[2 * k + 1] ?? 0;
    power[k] = re * re + im * im;
    weighted[k] = (re * (moments[2 * k] ?? 0) + im * (moments[2 * k + 1] ?? 0)) / sampleRate;
  }
  const hzPerBin = sampleRate / size;
  const quiet = noise && powerSpectrum(windowResponse(noise, arrivalSeconds, options), spacingHz);
  const clear = clearOfNoise({ hzPerBin, power }, quiet);
  const delay = binMean(weighted, power, hzPerBin, fraction);
  return Array.from(hz, (each) => (clear(each) ? delay(each) : null));
}
