import { nextPowerOfTwo, realSpectrum, type HalfSpectrum } from '../fft/fft';
import type { ImpulseResponse } from '../response/impulse-response';
import { ringing, slowSamples } from '../response/slow-samples';
import { cutAround, cutLike, peakIndex, TAPER_SECONDS, type Cut } from './bass-cut';
import { earlyParts } from './early-part';

/** Bass of one or several impulse responses in bands of 1/12 octave, for fitRolloff. */
export interface RolloffBands {
  /** Midpoints 15·2^(k/12) Hz, k = 0 … 60. */
  readonly hz: Float64Array;
  /** Power per band, noise subtracted, re the 180 to 500 Hz mean; may be below 0 in noise. */
  readonly power: Float64Array;
  /** Noise power that came with it, same reference. */
  readonly noisePower: Float64Array;
  /** Independent spectral lines averaged in the band, all responses together; at least 1. */
  readonly lines: Float64Array;
  /** Signal over noise, dB; Infinity where no noise is known, −Infinity where no signal is left. */
  readonly marginDb: Float64Array;
  /** The same through the windows of EARLY_SECONDS, same reference; none when not known. */
  readonly early: readonly EarlyBands[];
}

/** Bands of the response under a window e^(−t/τ) from its onset on; see early-part. */
export interface EarlyBands {
  readonly seconds: number;
  readonly power: Float64Array;
  readonly noisePower: Float64Array;
}

export const BAND_COUNT = 61;
export const BANDS_PER_OCTAVE = 12;
export const LOWEST_BAND_HZ = 15;

/** Slow samples are flat up to a quarter of their rate; early parts look up to 1 kHz. */
const LEAST_SLOW_HZ = 4000;
const LEAST_RATIO = 4;

const REFERENCE_HZ = [180, 500] as const;
/** Mean square of the taper at the end of a cut. */
const TAPER_ENERGY = 0.375;

/** Midpoint of band k in Hz. */
export function rolloffBandHz(k: number): number {
  return LOWEST_BAND_HZ * 2 ** (k / BANDS_PER_OCTAVE);
}

/**
 * Bass of an impulse response in bands. The response is cut from 0.1 s before its largest sample to
 * 1.25 s after it (tapered, no gate), transformed with lines at most 0.75 Hz apart, and averaged by
 * power in rectangular bands of 1/12 octave. `noise` is silence that went through the same
 * deconvolution; its power is subtracted. Null: noise is taken as none.
 * Throws RangeError when the response is empty, silent or not finite, or the rates differ.
 */
export function rolloffBands(ir: ImpulseResponse, noise: ImpulseResponse | null): RolloffBands {
  if (!(ir.sampleRate >= 2000)) {
    throw new RangeError(`sampleRate must be at least 2000 Hz, got ${ir.sampleRate}`);
  }
  if (noise && noise.sampleRate !== ir.sampleRate) {
    throw new RangeError(
      `noise must have the response's rate ${ir.sampleRate}, got ${noise.sampleRate}`,
    );
  }
  if (noise?.samples.length === 0) throw new RangeError('noise must hold samples, got none');
  const ratio = ratioFor(ir.sampleRate);
  const sampleRate = ir.sampleRate / ratio;
  const peak = Math.round(peakIndex(ir.samples) / ratio);
  const cut = cutAround(slowed(ir.samples, ratio), sampleRate, peak);
  const size = nextPowerOfTwo(Math.max(cut.samples.length, sampleRate / 0.75));
  const lineHz = sampleRate / size;
  const spectrum = realSpectrum(cut.samples, size);
  const total = bandPower(spectrum, lineHz);
  const noisePower = noise
    ? noiseBands(slowed(noise.samples, ratio), cut, size, sampleRate)
    : new Float64Array(BAND_COUNT);
  const hz = Float64Array.from({ length: BAND_COUNT }, (_, k) => rolloffBandHz(k));
  const seconds = cut.samples.length / sampleRate;
  const clearSeconds = Math.max(seconds - TAPER_SECONDS, 0.05);
  const noiseSeconds = Math.max(seconds - (1 - TAPER_ENERGY) * TAPER_SECONDS, 0.05);
  const raw = {
    hz,
    power: differenceOf(total, noisePower),
    noisePower,
    lines: hz.map((_, k) => Math.max(1, widthHz(k) * clearSeconds)),
    early: earlyParts(spectrum, lineHz, seconds).map((part) => {
      const noiseHere = divided(noisePower, noiseSeconds / part.windowSeconds);
      const power = differenceOf(bandPower(part.spectrum, lineHz), noiseHere);
      return { seconds: part.seconds, power, noisePower: noiseHere };
    }),
  };
  return relateTo(raw);
}

/** How many times slower a response may be sampled and still hold its bass untouched. */
function ratioFor(sampleRate: number): number {
  let ratio = 1;
  while (sampleRate >= 2 * ratio * LEAST_SLOW_HZ) ratio *= 2;
  return ratio >= LEAST_RATIO ? ratio : 1;
}

function slowed(samples: Float64Array, ratio: number): Float64Array {
  if (ratio === 1) return samples;
  return slowSamples(samples, ratio).subarray(ringing, ringing + Math.ceil(samples.length / ratio));
}

/** Scales powers to their mean level from 180 to 500 Hz and reads the margins. */
function differenceOf(a: Float64Array, b: Float64Array): Float64Array {
  const result = new Float64Array(a.length);
  for (let k = 0; k < result.length; k++) result[k] = (a[k] ?? 0) - (b[k] ?? 0);
  return result;
}

function divided(values: Float64Array, by: number): Float64Array {
  const result = new Float64Array(values.length);
  for (let k = 0; k < result.length; k++) result[k] = (values[k] ?? 0) / by;
  return result;
}

function relateTo(raw: Omit<RolloffBands, 'marginDb'>): RolloffBands {
  const reference = referencePower(raw.hz, raw.power, raw.noisePower);
  const power = divided(raw.power, reference);
  const noisePower = divided(raw.noisePower, reference);
  const marginDb = marginsDb(power, noisePower);
  const early = raw.early.map((part) => ({
    seconds: part.seconds,
    power: divided(part.power, reference),
    noisePower: divided(part.noisePower, reference),
  }));
  return { ...raw, power, noisePower, marginDb, early };
}

/** Signal over noise per band, dB; Infinity where there is no noise, −Infinity without a signal. */
export function marginsDb(power: Float64Array, noisePower: Float64Array): Float64Array {
  return power.map((p, k) => {
    const n = noisePower[k] ?? 0;
    if (p <= 0) return -Infinity;
    return n > 0 ? 10 * Math.log10(p / n) : Infinity;
  });
}

/** Mean of the levels in dB from 180 to 500 Hz, as a power; what is below the noise counts as it. */
export function referencePower(hz: Float64Array, power: Float64Array, noise: Float64Array): number {
  const [low, high] = REFERENCE_HZ;
  const least = Math.max(...power, ...noise) * 1e-12;
  if (!(least > 0)) return 1;
  let sum = 0;
  let count = 0;
  for (let k = 0; k < hz.length; k++) {
    const f = hz[k] ?? 0;
    if (f < low || f > high) continue;
    sum += Math.log(Math.max(power[k] ?? 0, noise[k] ?? 0, least));
    count++;
  }
  return Math.exp(sum / count);
}

function widthHz(k: number): number {
  const half = 2 ** (0.5 / BANDS_PER_OCTAVE);
  return rolloffBandHz(k) * (half - 1 / half);
}

/** Mean of |X|² over each band. */
function bandPower(spectrum: HalfSpectrum, lineHz: number): Float64Array {
  const half = 2 ** (0.5 / BANDS_PER_OCTAVE);
  const power = new Float64Array(BAND_COUNT);
  for (let k = 0; k < BAND_COUNT; k++) {
    const line = rolloffBandHz(k) / lineHz;
    power[k] = meanBetween(spectrum, line / half, line * half);
  }
  return power;
}

/** Mean of |X|² from one line to another; a line counts by the part of it that lies between. */
function meanBetween(spectrum: HalfSpectrum, low: number, high: number): number {
  let sum = 0;
  for (let line = Math.round(low); line <= Math.round(high); line++) {
    const share = Math.min(line + 0.5, high) - Math.max(line - 0.5, low);
    const re = spectrum[2 * line] ?? 0;
    const im = spectrum[2 * line + 1] ?? 0;
    sum += Math.max(share, 0) * (re * re + im * im);
  }
  return sum / (high - low);
}

/** Noise power per band for a cut as long as `cut`. */
function noiseBands(
  samples: Float64Array,
  cut: Cut,
  size: number,
  sampleRate: number,
): Float64Array {
  const stretch = cutLike(samples, sampleRate, cut);
  const scale = cut.samples.length / stretch.length;
  const raw = bandPower(realSpectrum(stretch, size), sampleRate / size);
  // One stretch gives one or two lines a band at the bottom: average over a quarter octave.
  const noise = new Float64Array(raw.length);
  for (let k = 0; k < noise.length; k++) {
    const last = Math.min(k + 1, raw.length - 1);
    const first = Math.max(0, k - 1);
    let sum = 0;
    for (let n = first; n <= last; n++) sum += raw[n] ?? 0;
    noise[k] = scale * Math.max(sum / (last - first + 1), 0.5 * (raw[k] ?? 0));
  }
  return noise;
}
