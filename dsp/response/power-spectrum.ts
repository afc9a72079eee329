import { nextPowerOfTwo, passingSpectrum } from '../fft/fft';
import { scratch } from '../signal/scratch';
import type { ImpulseResponse } from './impulse-response';
import { powerOf, wholePower } from './whole-spectrum';

/** |H|² at 0, hzPerBin, 2·hzPerBin … half the sample rate. */
export interface PowerSpectrum {
  readonly hzPerBin: number;
  readonly power: Float64Array;
}

const wholeSpacingHz = 1;
/**
 * |H(f)|² of an impulse response, no window, zero-padded so that bins lie at most `spacingHz`
 * apart; at 1 Hz kept with the samples. Neither may be changed afterwards. Throws RangeError when spacingHz is not positive.
 */
export function powerSpectrum(ir: ImpulseResponse, spacingHz = wholeSpacingHz): PowerSpectrum {
  const size = sizeFor(ir.samples.length, ir.sampleRate, spacingHz);
  const isWhole = spacingHz === wholeSpacingHz && size === nextPowerOfTwo(ir.samples.length);
  const power = isWhole ? wholePower(ir.samples) : powerOf(passingSpectrum(ir.samples, size));
  return { hzPerBin: ir.sampleRate / size, power };
}

const room = scratch();
const integrals = new WeakMap<Float64Array, Float64Array>();

/**
 * Integral of the power from 0 to each bin's upper edge, every bin's power standing from half a
 * bin below to half a bin above it; the way to many band means from one pass.
 */
export function integratePower(spectrum: PowerSpectrum): (hz: number) => number {
  const integral = powerIntegral(spectrum);
  return (hz) => powerUpTo(integral, hz);
}

/** What powerUpTo reads. */
export interface PowerIntegral {
  readonly hzPerBin: number;
  /** Of the powers below each bin, that of bin 0 by half, and of all. */
  readonly sums: Float64Array;
}

/** integratePower as data, for who asks many spectra: a closure of each would be compiled anew. */
export function powerIntegral({ power, hzPerBin }: PowerSpectrum): PowerIntegral {
  const sums = integrals.get(power) ?? sumUp(power);
  integrals.set(power, sums);
  return { hzPerBin, sums };
}

/** The integral from 0 to a frequency, as integratePower gives it. */
export function powerUpTo({ hzPerBin, sums }: PowerIntegral, hz: number): number {
  const position = Math.min(Math.max(hz / hzPerBin + 0.5, 0.5), sums.length - 1.5);
  const bin = Math.floor(position);
  const into = bin > 0 ? position - bin : 2 * position - 1;
  const below = sums[bin] ?? 0;
  return (below + ((sums[bin + 1] ?? 0) - below) * into) * hzPerBin;
}

/**
 * As powerIntegral of powerSpectrum, for who needs the integral alone: fewer arrays are made.
 * Throws RangeError when spacingHz is not positive.
 */
export function responseIntegral(
  samples: Float64Array,
  sampleRate: number,
  spacingHz: number,
): PowerIntegral {
  const size = sizeFor(samples.length, sampleRate, spacingHz);
  const power = powerOf(passingSpectrum(samples, size), room);
  return { hzPerBin: sampleRate / size, sums: sumUp(power) };
}

/** The frequency of the last bin, up to which there is an integral. */
export function topHz({ hzPerBin, sums }: PowerIntegral): number {
  return (sums.length - 2) * hzPerBin;
}

function sizeFor(length: number, sampleRate: number, spacingHz: number): number {
  if (!(spacingHz > 0)) throw new RangeError(`spacingHz must be positive, got ${spacingHz}`);
  return nextPowerOfTwo(Math.max(length, sampleRate / spacingHz));
}

function sumUp(power: Float64Array): Float64Array {
  const sums = new Float64Array(power.length + 1);
  let sum = 0;
  for (let k = 0; k < power.length; k++) {
    sum += (power[k] ?? 0) * (k === 0 ? 0.5 : 1);
    sums[k + 1] = sum;
  }
  return sums;
}
