import type { ImpulseResponse } from '../response/impulse-response';
import { integratePower, powerSpectrum, type PowerSpectrum } from '../response/power-spectrum';
import { fadeEnds } from '../signal/fade';
import type { HarmonicWindow } from './harmonic-windows';

/** Mean |H|² over the band round a frequency. */
export type BandEnergy = (hz: number) => number;

/** Bands of 1/6 octave. */
export const fraction = 6;
const half = 2 ** (0.5 / fraction);

/** Width of a band, Hz. */
export function bandWidthHz(hz: number): number {
  return hz * (half - 1 / half);
}

/**
 * Energy of a response through a window, `shift` samples later, in bands; its bins lie closer than
 * the window resolves by `padding`. What lies outside the response counts as 0.
 */
export function windowedEnergy(
  { samples, sampleRate }: ImpulseResponse,
  window: HarmonicWindow,
  shift: number,
  padding: number,
): BandEnergy {
  const piece = throughWindow(samples, window, shift);
  const spacingHz = sampleRate / Math.max(padding * piece.length, 2);
  return meanIn(powerSpectrum({ samples: piece, sampleRate, zeroIndex: 0 }, spacingHz));
}

/** Spectrum of a stretch of noise, made once for all harmonics of all speakers. */
export interface NoiseSpectrum {
  /** Integral over frequency of the integrated power per sample, up to a frequency. */
  readonly twice: (hz: number) => number;
  readonly sampleRate: number;
}

const noiseSpacingHz = 1;

/**
 * The noise's spectrum from silence through the deconvolution of a sweep, and so in the mean of as
 * many sweeps. Throws RangeError for less than one sweep.
 */
export function noiseSpectrum(noise: ImpulseResponse, sweeps = 1): NoiseSpectrum {
  if (!(sweeps >= 1)) throw new RangeError(`sweeps must be 1 or more, got ${sweeps}`);
  const { power, hzPerBin } = powerSpectrum(noise, noiseSpacingHz);
  const once = integratePower({ hzPerBin, power });
  const count = noise.samples.length * sweeps;
  const sums = new Float64Array(power.length);
  for (let k = 1; k < sums.length; k++) {
    sums[k] = (sums[k - 1] ?? 0) + 0.5 * hzPerBin * (once((k - 1) * hzPerBin) + once(k * hzPerBin));
  }
  const twice = (hz: number): number => {
    const position = Math.min(Math.max(hz / hzPerBin, 0), sums.length - 1.001);
    const bin = Math.floor(position);
    const start = sums[bin] ?? 0;
    return (start + (position - bin) * ((sums[bin + 1] ?? start) - start)) / count;
  };
  return { twice, sampleRate: noise.sampleRate };
}

/** Energy that noise leaves in a window, in bands: its spectrum as wide as the window blurs it. */
export function noiseEnergy(
  { twice, sampleRate }: NoiseSpectrum,
  { lengthSeconds, energySeconds }: HarmonicWindow,
): BandEnergy {
  const reach = 0.5 / lengthSeconds;
  return (hz) => {
    const [low, high] = [hz / half, hz * half];
    const rise = twice(high + reach) - twice(high - reach);
    const fall = twice(low + reach) - twice(low - reach);
    return (Math.max(rise - fall, 0) * energySeconds * sampleRate) / (2 * reach * (high - low));
  };
}

/** The stretch of a signal that a window shows, `shift` samples later; zeros outside the signal. */
export function throughWindow(
  samples: Float64Array,
  { start, length, fadeIn, fadeOut }: HarmonicWindow,
  shift: number,
): Float64Array {
  const piece = new Float64Array(length);
  const from = start + shift;
  const inside = samples.subarray(Math.max(from, 0), Math.max(from + length, 0));
  piece.set(inside, Math.min(Math.max(-from, 0), length - inside.length));
  fadeEnds(piece, fadeIn, fadeOut);
  return piece;
}

function meanIn(spectrum: PowerSpectrum): BandEnergy {
  const integral = integratePower(spectrum);
  const top = (spectrum.power.length - 1) * spectrum.hzPerBin;
  return (hz) => {
    const [low, high] = [hz / half, Math.min(hz * half, top)];
    return high > low ? Math.max((integral(high) - integral(low)) / (high - low), 0) : 0;
  };
}
