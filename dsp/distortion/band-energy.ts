import type { ImpulseResponse } from '../response/impulse-response';
import {
  powerIntegral,
  powerSpectrum,
  powerUpTo,
  responseIntegral,
  topHz,
  type PowerIntegral,
} from '../response/power-spectrum';
import { fadeEnds } from '../signal/fade';
import { scratch } from '../signal/scratch';
import type { HarmonicWindow } from './harmonic-windows';

/** What energyAt reads. */
export type BandEnergy = PowerIntegral;

/** Bands of 1/6 octave. */
export const fraction = 6;
const half = 2 ** (0.5 / fraction);
const room = scratch();

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
  const piece = throughWindow(samples, window, shift, room(window.length));
  const spacingHz = sampleRate / Math.max(padding * piece.length, 2);
  return responseIntegral(piece, sampleRate, spacingHz);
}

/** Mean |H|² over the band round a frequency. */
export function energyAt(energy: BandEnergy, hz: number): number {
  const low = hz / half;
  const high = Math.min(hz * half, topHz(energy));
  if (!(high > low)) return 0;
  return Math.max((powerUpTo(energy, high) - powerUpTo(energy, low)) / (high - low), 0);
}

/** Spectrum of a stretch of noise, made once for all harmonics of all speakers. */
export interface NoiseSpectrum {
  /** Integral over frequency of the integrated power per sample, up to each bin. */
  readonly twice: Float64Array;
  readonly hzPerBin: number;
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
  const once = powerIntegral({ hzPerBin, power });
  const count = noise.samples.length * sweeps;
  return { twice: integrateAgain(once, count), hzPerBin, sampleRate: noise.sampleRate };
}

/** The integral of an integral up to each bin, over `count`. */
function integrateAgain(once: PowerIntegral, count: number): Float64Array {
  const { hzPerBin } = once;
  const sums = new Float64Array(once.sums.length - 1);
  let below = powerUpTo(once, 0);
  for (let k = 1; k < sums.length; k++) {
    const here = powerUpTo(once, k * hzPerBin);
    sums[k] = (sums[k - 1] ?? 0) + (0.5 * hzPerBin * (below + here)) / count;
    below = here;
  }
  return sums;
}

/** What noise leaves in a window. */
export interface NoiseEnergy {
  readonly noise: NoiseSpectrum;
  readonly window: HarmonicWindow;
}

/** Mean energy of noise over the band round a frequency: its spectrum as wide as the window blurs it. */
export function noiseAt({ noise, window }: NoiseEnergy, hz: number): number {
  const reach = 0.5 / window.lengthSeconds;
  const low = hz / half;
  const high = hz * half;
  const rise = twiceUpTo(noise, high + reach) - twiceUpTo(noise, high - reach);
  const fall = twiceUpTo(noise, low + reach) - twiceUpTo(noise, low - reach);
  const energy = Math.max(rise - fall, 0) * window.energySeconds * noise.sampleRate;
  return energy / (2 * reach * (high - low));
}

function twiceUpTo({ twice, hzPerBin }: NoiseSpectrum, hz: number): number {
  const position = Math.min(Math.max(hz / hzPerBin, 0), twice.length - 1.001);
  const bin = Math.floor(position);
  const start = twice[bin] ?? 0;
  return start + (position - bin) * ((twice[bin + 1] ?? start) - start);
}

/**
 * The stretch of a signal that a window shows, `shift` samples later; zeros outside the signal. In
 * `piece`, of the window's length, where that is given.
 */
export function throughWindow(
  samples: Float64Array,
  { start, length, fadeIn, fadeOut }: HarmonicWindow,
  shift: number,
  piece: Float64Array = new Float64Array(length),
): Float64Array {
  const from = start + shift;
  const inside = samples.subarray(Math.max(from, 0), Math.max(from + length, 0));
  const at = Math.min(Math.max(-from, 0), length - inside.length);
  piece.fill(0, 0, at);
  piece.set(inside, at);
  piece.fill(0, at + inside.length);
  fadeEnds(piece, fadeIn, fadeOut);
  return piece;
}
