import { nextPowerOfTwo, realSpectrum } from '../fft/fft';
import type { ImpulseResponse } from './impulse-response';

/** |H|² at 0, hzPerBin, 2·hzPerBin … half the sample rate. */
export interface PowerSpectrum {
  readonly hzPerBin: number;
  readonly power: Float64Array;
}

/**
 * |H(f)|² of an impulse response, no window, zero-padded so that bins lie at most `spacingHz`
 * apart. Throws RangeError when spacingHz is not positive.
 */
export function powerSpectrum(ir: ImpulseResponse, spacingHz = 1): PowerSpectrum {
  if (!(spacingHz > 0)) throw new RangeError(`spacingHz must be positive, got ${spacingHz}`);
  const size = nextPowerOfTwo(Math.max(ir.samples.length, ir.sampleRate / spacingHz));
  const spectrum = realSpectrum(ir.samples, size);
  const power = new Float64Array(size / 2 + 1);
  for (let k = 0; k < power.length; k++) {
    power[k] = (spectrum[2 * k] ?? 0) ** 2 + (spectrum[2 * k + 1] ?? 0) ** 2;
  }
  return { hzPerBin: ir.sampleRate / size, power };
}

/**
 * Integral of the power from 0 to each bin's upper edge, every bin's power standing from half a
 * bin below to half a bin above it; the way to many band means from one pass.
 */
export function integratePower(spectrum: PowerSpectrum): (hz: number) => number {
  const { power, hzPerBin } = spectrum;
  const sums = new Float64Array(power.length + 1);
  let sum = 0;
  for (let k = 0; k < power.length; k++) {
    sum += (power[k] ?? 0) * (k === 0 ? 0.5 : 1);
    sums[k + 1] = sum;
  }
  return (hz) => {
    const position = Math.min(Math.max(hz / hzPerBin + 0.5, 0.5), power.length - 0.5);
    const bin = Math.floor(position);
    const into = position - Math.max(bin, 0.5);
    return ((sums[bin] ?? 0) + (power[bin] ?? 0) * into) * hzPerBin;
  };
}
