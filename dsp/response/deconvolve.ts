import { multiplySpectra } from '../fft/convolve';
import { advance } from '../fft/advance';
import { nextPowerOfTwo, passingSpectrum, realSignal, type HalfSpectrum } from '../fft/fft';
import { fadeEnds } from '../signal/fade';
import { stretchOf } from '../signal/stretch-of';
import { sweepRateSeconds, sweepSignal, type SweepSpec } from '../signal/sweep';
import type { ImpulseResponse } from './impulse-response';
import type { Samples } from '../signal/samples';

export interface DeconvolveOptions {
  /** Samples of the response before zero delay; harmonic k stands at −L·ln k. */
  readonly preSamples: number;
  /** Samples of the whole response. */
  readonly lengthSamples: number;
  /**
   * Samples of the capture for one of the sweep, default 1, when the capture has a clock of its
   * own: the response then has the capture's rate in the sweep's seconds.
   */
  readonly stretch?: number;
}

/** Regularisation re the power of an endless sweep. */
const regularisation = 1e-4;
/** The band rises from 0 to 1 between these multiples of startHz, and falls between these of endHz. */
const lowSkirt = [0.2, 1.2] as const;
const highSkirt = [1, 0.92] as const;

/** The ends of the response fade over this, so that a cut through the bass makes no treble. */
const edgeSeconds = 0.002;

/** Inverse spectra last used, newest last; a take needs two or three. */
const inverses = new Map<string, HalfSpectrum>();
const keptInverses = 4;

/**
 * Impulse response from a captured sweep by regularised spectral division,
 * H = B Y X* / (|X|² + 10⁻⁴ |X₀|²) with |X₀|² = L·fs²/4f, the power of an endless sweep, and B the
 * sweep's band: 1 between 1.2 startHz and 0.92 endHz, skirts of half a raised cosine, zero phase.
 * Linear: what is cut from the ends never wraps round. Both ends fade over 2 ms, or over half of
 * what stands before or after zero delay.
 *
 * captured[startIndex] is the moment the sweep starts, with `stretch` between samples as well;
 * samples outside `captured` count as 0.
 * A unit-gain system has |H| = 1 within 0.01 dB in the band if preSamples spans 3/startHz or more:
 * the skirt at startHz rings that long to both sides of an arrival; 1/startHz costs 0.2 dB.
 * Throws RangeError when a length is not whole, preSamples lies outside it, startIndex is not whole
 * on the sweep's own clock, or stretch lies outside 0.9 … 1.1.
 * Source: Farina, AES 108 (2000); Kirkeby and Nelson, JAES 47 (1999).
 */
export function deconvolveSweep(
  captured: Samples,
  startIndex: number,
  sweep: SweepSpec,
  options: DeconvolveOptions,
): ImpulseResponse {
  const { preSamples, lengthSamples, stretch = 1 } = options;
  const start = Math.floor(startIndex);
  if (!(stretch > 0.9 && stretch < 1.1)) {
    throw new RangeError(`stretch must lie in 0.9 … 1.1, got ${stretch}`);
  }
  checkWhole('startIndex', stretch === 1 ? startIndex : start, -Infinity);
  checkWhole('preSamples', preSamples, 0);
  checkWhole('lengthSamples', lengthSamples, preSamples + 1);
  const needed = lengthSamples + Math.ceil(sweep.lengthSamples * stretch);
  const size = nextPowerOfTwo(needed);
  const inverse = inverseSpectrum(sweep, size, stretch);
  const spectrum = passingSpectrum(stretchTo(captured, start - preSamples, needed), size);
  multiplySpectra(spectrum.subarray(0, inverse.length), inverse);
  spectrum.fill(0, inverse.length);
  advance(spectrum, startIndex - start, size);
  const samples = realSignal(spectrum, size, spectrum.subarray(0, size)).slice(0, lengthSamples);
  const fade = Math.round(edgeSeconds * sweep.sampleRate);
  fadeEnds(
    samples,
    Math.min(fade, preSamples >> 1),
    Math.min(fade, (lengthSamples - preSamples) >> 1),
  );
  return {
    samples,
    sampleRate: sweep.sampleRate * stretch,
    zeroIndex: preSamples,
  };
}

/** stretchOf without the zeros at its end, which transforms add by themselves. */
function stretchTo(captured: Samples, from: number, length: number): Float64Array {
  const held = Math.max(Math.min(length, captured.length - from), 0);
  return stretchOf(captured, from, from >= 0 ? held : length);
}

/**
 * Spectrum by which a capture of the sweep is multiplied to give its impulse response,
 * up to its last bin that is not 0; `size` a power of two of at least the sweep's length. Kept for
 * the sweeps last used.
 */
function inverseSpectrum(sweep: SweepSpec, size: number, stretch: number): HalfSpectrum {
  const key = [
    sweep.startHz,
    sweep.endHz,
    sweep.lengthSamples,
    sweep.sampleRate,
    sweep.fadeInSamples,
    sweep.fadeOutSamples,
    size,
    stretch,
  ].join();
  const inverse = inverses.get(key) ?? computeInverse(sweep, size, stretch);
  inverses.delete(key);
  inverses.set(key, inverse);
  for (const oldest of inverses.keys()) {
    if (inverses.size <= keptInverses) break;
    inverses.delete(oldest);
  }
  return inverse;
}

function computeInverse(sweep: SweepSpec, size: number, stretch: number): HalfSpectrum {
  const inverse = passingSpectrum(sweepSignal(sweep, stretch), size);
  const rate = sweep.sampleRate * stretch;
  const endlessPower = (sweepRateSeconds(sweep) * rate ** 2) / 4;
  for (let k = 0; k <= size / 2; k++) {
    const hz = (k * rate) / size;
    const re = inverse[2 * k] ?? 0;
    const im = inverse[2 * k + 1] ?? 0;
    const inBand = Math.min(Math.max(hz, sweep.startHz), sweep.endHz);
    const floor = (regularisation * endlessPower) / inBand;
    const band = rise(hz / sweep.startHz, lowSkirt) * rise(hz / sweep.endHz, highSkirt);
    const scale = band / (re * re + im * im + floor);
    inverse[2 * k] = re * scale;
    inverse[2 * k + 1] = -im * scale;
  }
  const bins = Math.floor(inverse.findLastIndex((part) => part !== 0) / 2) + 1;
  return inverse.slice(0, 2 * bins);
}

/** Half a raised cosine from 0 at `from` to 1 at `to`. */
function rise(value: number, [from, to]: readonly [number, number]): number {
  const along = Math.min(Math.max((value - from) / (to - from), 0), 1);
  return 0.5 * (1 - Math.cos(Math.PI * along));
}

function checkWhole(name: string, value: number, least: number): void {
  if (!Number.isInteger(value) || value < least) {
    throw new RangeError(`${name} must be whole and at least ${least}, got ${value}`);
  }
}
