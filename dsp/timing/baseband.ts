import { complexPlan } from '../fft/complex-plan';
import { multiplyConjugate } from '../fft/convolve';
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
  /** Power of the strongest entry. */
  readonly peakPower: number;
}

/** Entries per block. */
const blockLength = 16_384;
/** Entries that each end of a block rings. */
const ringing = 512;
/** Longest template, in entries, that is correlated block by block. */
const longestTemplate = 1024;
/** Entries from block to block; a whole number of carrier steps, as the carrier's phase is. */
export const baseHop = blockLength - 2 * ringing - longestTemplate;
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
  return passBlocks(signal, sampleRate, [lowHz, highHz], null).base;
}

/**
 * As toBaseband, and in the same pass the power of the correlation of a template (interleaved re,
 * im, of the same band and rate) with the stretch that starts at each entry. Null in place of that
 * for a template of more than 1024 entries.
 */
export function correlatedBaseband(
  signal: Samples,
  sampleRate: number,
  lowHz: number,
  highHz: number,
  template: Float32Array,
): { base: Baseband; powers: Float32Array | null } {
  const fits = template.length <= 2 * longestTemplate;
  return passBlocks(signal, sampleRate, [lowHz, highHz], fits ? template : null);
}

function passBlocks(
  signal: Samples,
  sampleRate: number,
  [lowHz, highHz]: readonly [number, number],
  template: Float32Array | null,
): { base: Baseband; powers: Float32Array | null } {
  if (!(lowHz > 0 && highHz > lowHz && highHz * (1 + 1 / 12) - lowHz * 0.75 < lowestRate)) {
    throw new RangeError(`band must lie within 20 kHz, got ${lowHz} … ${highHz} Hz`);
  }
  const decimation = decimationFor(sampleRate);
  const size = blockLength * decimation;
  const middleBin = (((lowHz + highHz) / 2) * size) / sampleRate;
  const carrier = Math.round(middleBin / carrierStep) * carrierStep;
  const gains = bandGains(size, sampleRate, lowHz, highHz).map((gain) => (gain * 2) / decimation);
  const length = Math.ceil(signal.length / decimation);
  const samples = new Float32Array(2 * length);
  const powers = template && new Float32Array(length);
  const firstBin = gains.findIndex((gain) => gain > 0);
  const endBin = gains.findLastIndex((gain) => gain > 0) + 1;
  const block = new Float64Array(size);
  const spectrum = new Float64Array(size + 2);
  const shifted = new Float64Array(2 * blockLength);
  const envelope = new Float64Array(2 * blockLength);
  const plan = complexPlan(blockLength);
  const filter = template && spectrumOf(template);
  let peakPower = 0;
  for (let start = 0; start < length; start += baseHop) {
    copyFinite(signal, (start - ringing) * decimation, block);
    realSpectrum(block, size, spectrum);
    shifted.fill(0);
    weigh(spectrum, gains, firstBin, carrier, shifted, blockLength - carrier);
    weigh(spectrum, gains, carrier, endBin, shifted, -carrier);
    plan.inverse(envelope, shifted);
    const count = Math.min(baseHop, length - start);
    const kept = samples.subarray(2 * start, 2 * (start + count));
    peakPower = Math.max(peakPower, keep(envelope, ringing, kept));
    if (!filter || !powers) continue;
    multiplyConjugate(shifted, filter);
    plan.inverse(envelope, shifted);
    fillPowers(envelope, ringing, powers.subarray(start, start + count));
  }
  return { base: { samples, decimation, rate: sampleRate / decimation, peakPower }, powers };
}

function spectrumOf(template: Float32Array): Float64Array {
  const padded = new Float64Array(2 * blockLength);
  padded.set(template);
  const filter = new Float64Array(2 * blockLength);
  complexPlan(blockLength).forward(filter, padded);
  return filter;
}

/** Bins from … to (exclusive) of a spectrum times their gains, at bin + `by` of another. */
function weigh(
  spectrum: Float64Array,
  gains: Float64Array,
  from: number,
  to: number,
  into: Float64Array,
  by: number,
): void {
  for (let bin = from; bin < to; bin++) {
    const gain = gains[bin] ?? 0;
    into[2 * (bin + by)] = gain * (spectrum[2 * bin] ?? 0);
    into[2 * (bin + by) + 1] = gain * (spectrum[2 * bin + 1] ?? 0);
  }
}

/** Copies complex entries from `first` on; the power of the strongest. */
function keep(entries: Float64Array, first: number, into: Float32Array): number {
  let peak = 0;
  for (let n = 0; n < into.length; n += 2) {
    const re = entries[2 * first + n] ?? 0;
    const im = entries[2 * first + n + 1] ?? 0;
    into[n] = re;
    into[n + 1] = im;
    const power = re * re + im * im;
    if (power > peak) peak = power;
  }
  return peak;
}

/** Fills |z|² of complex entries from `first` on. */
export function fillPowers(entries: Float64Array, first: number, powers: Float32Array): void {
  for (let n = 0; n < powers.length; n++) {
    const re = entries[2 * (first + n)] ?? 0;
    const im = entries[2 * (first + n) + 1] ?? 0;
    powers[n] = re * re + im * im;
  }
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
