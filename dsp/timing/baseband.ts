import { complexPlan } from '../fft/complex-plan';
import { realSpectrum } from '../fft/fft';
import type { Samples } from '../signal/samples';

/** Complex envelope of one band of a real signal; entry n stands at sample n·decimation. */
export interface Baseband {
  /** Interleaved re, im. */
  readonly samples: Float32Array;
  /** Input samples per entry; a power of two. */
  readonly decimation: number;
  /** Entries per second. */
  readonly rate: number;
}

/** Entries per block, and how many of them overlap with the next one. */
const blockLength = 8192;
const overlap = 1024;
/** Entries from block to block; a whole number of carrier steps, as the carrier's phase is. */
export const baseHop = blockLength - overlap;
/** The carrier is a multiple of so many bins, which keeps its phase from block to block. */
const carrierStep = 16;
const lowestRate = 20_000;

/**
 * Shifts the band lowHz … highHz of a signal to zero frequency and thins it out to at least
 * 20,000 complex entries per second. The band has skirts of raised cosines, a quarter of lowHz and
 * a twelfth of highHz wide; values that are no finite numbers count as 0. Common practice
 * (overlap-save).
 */
export function toBaseband(
  signal: Samples,
  sampleRate: number,
  lowHz: number,
  highHz: number,
): Baseband {
  if (!(lowHz > 0 && highHz > lowHz && highHz * (1 + 1 / 12) - lowHz * 0.75 < lowestRate)) {
    throw new RangeError(`band must lie within 20 kHz, got ${lowHz} … ${highHz} Hz`);
  }
  const decimation = decimationFor(sampleRate);
  const size = blockLength * decimation;
  const middleBin = (((lowHz + highHz) / 2) * size) / sampleRate;
  const carrier = Math.round(middleBin / carrierStep) * carrierStep;
  const gains = bandGains(size, sampleRate, lowHz, highHz);
  const length = Math.ceil(signal.length / decimation);
  const samples = new Float32Array(2 * length);
  const hop = baseHop;
  const firstBin = gains.findIndex((gain) => gain > 0);
  const endBin = gains.findLastIndex((gain) => gain > 0) + 1;
  const block = new Float64Array(size);
  const spectrum = new Float64Array(size + 2);
  const shifted = new Float64Array(2 * blockLength);
  const envelope = new Float64Array(2 * blockLength);
  const plan = complexPlan(blockLength);
  for (let start = 0; start < length; start += hop) {
    copyFinite(signal, (start - overlap / 2) * decimation, block);
    realSpectrum(block, size, spectrum);
    shifted.fill(0);
    for (let bin = firstBin; bin < endBin; bin++) {
      const gain = (gains[bin] ?? 0) * (2 / decimation);
      const to = 2 * ((bin - carrier + blockLength) % blockLength);
      shifted[to] = gain * (spectrum[2 * bin] ?? 0);
      shifted[to + 1] = gain * (spectrum[2 * bin + 1] ?? 0);
    }
    plan.inverse(envelope, shifted);
    const count = Math.min(hop, length - start);
    samples.set(envelope.subarray(overlap, overlap + 2 * count), 2 * start);
  }
  return { samples, decimation, rate: sampleRate / decimation };
}

/** Input samples per entry at a rate. */
export function decimationFor(sampleRate: number): number {
  let decimation = 1;
  while (sampleRate / (decimation * 2) >= lowestRate) decimation *= 2;
  return decimation;
}

/** Gain of each bin 0 … size/2: 1 from lowHz to highHz, raised-cosine skirts, 0 elsewhere. */
export function bandGains(
  size: number,
  sampleRate: number,
  lowHz: number,
  highHz: number,
): Float64Array {
  const gains = new Float64Array(size / 2 + 1);
  for (let bin = 1; bin < gains.length; bin++) {
    const hz = (bin * sampleRate) / size;
    const below = (lowHz - hz) / (lowHz * 0.25);
    const above = (hz - highHz) / (highHz / 12);
    const outside = Math.min(Math.max(below, above, 0), 1);
    gains[bin] = 0.5 * (1 + Math.cos(Math.PI * outside));
  }
  return gains;
}

/** Fills `target` with signal[from …]; 0 outside the signal and for what is no finite number. */
export function copyFinite(signal: Samples, from: number, target: Float64Array): void {
  const first = Math.min(Math.max(0, -from), target.length);
  const end = Math.min(Math.max(first, signal.length - from), target.length);
  target.fill(0, 0, first);
  target.fill(0, end);
  for (let n = first; n < end; n++) {
    const value = signal[from + n] ?? 0;
    target[n] = Number.isFinite(value) ? value : 0;
  }
}
