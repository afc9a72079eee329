import { nextPowerOfTwo, realSpectrum } from '../fft/fft';
import type { ImpulseResponse } from '../response/impulse-response';

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
}

export const BAND_COUNT = 61;
export const BANDS_PER_OCTAVE = 12;
export const LOWEST_BAND_HZ = 15;

const REFERENCE_HZ = [180, 500] as const;
const BEFORE_SECONDS = 0.1;
const AFTER_SECONDS = 1.25;
const TAPER_SECONDS = 0.25;

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
  const { sampleRate } = ir;
  if (!(sampleRate >= 2000)) {
    throw new RangeError(`sampleRate must be at least 2000 Hz, got ${sampleRate}`);
  }
  if (noise && noise.sampleRate !== sampleRate) {
    throw new RangeError(
      `noise must have the response's rate ${sampleRate}, got ${noise.sampleRate}`,
    );
  }
  const cut = cutAround(ir.samples, sampleRate, peakIndex(ir.samples));
  const size = nextPowerOfTwo(Math.max(cut.samples.length, sampleRate / 0.75));
  const total = bandPower(cut.samples, size, sampleRate);
  const floor = noise
    ? noiseBands(noise.samples, cut.start, cut.samples.length, size, sampleRate)
    : new Float64Array(BAND_COUNT);
  const lines = new Float64Array(BAND_COUNT);
  const seconds = Math.max(cut.samples.length / sampleRate - TAPER_SECONDS, 0.05);
  const hz = Float64Array.from({ length: BAND_COUNT }, (_, k) => rolloffBandHz(k));
  for (let k = 0; k < BAND_COUNT; k++) lines[k] = Math.max(1, widthHz(k) * seconds);
  const power = total.map((p, k) => p - (floor[k] ?? 0));
  return finish(hz, power, floor, lines, REFERENCE_HZ);
}

/**
 * Power average of several readings (positions, or speakers of one model), each re its own mean
 * level over `referenceHz`: 180 to 500 Hz unless a low-pass cuts there, as on subs (40 to 80).
 * Throws RangeError on an empty list, or when no band lies in `referenceHz`.
 */
export function averageRolloffBands(
  readings: readonly RolloffBands[],
  referenceHz: readonly [number, number] = REFERENCE_HZ,
): RolloffBands {
  const list = readings.map(({ hz, power, noisePower, lines }) =>
    finish(hz, power, noisePower, lines, referenceHz),
  );
  const first = list[0];
  if (!first) throw new RangeError('readings must hold at least one, got none');
  const mean = (pick: (b: RolloffBands) => Float64Array): Float64Array =>
    Float64Array.from({ length: BAND_COUNT }, (_, k) => {
      let sum = 0;
      for (const bands of list) sum += pick(bands)[k] ?? 0;
      return sum / list.length;
    });
  const lines = mean((b) => b.lines).map((n) => n * list.length);
  return finish(
    first.hz.slice(),
    mean((b) => b.power),
    mean((b) => b.noisePower),
    lines,
    referenceHz,
  );
}

function finish(
  hz: Float64Array,
  power: Float64Array,
  noisePower: Float64Array,
  lines: Float64Array,
  referenceHz: readonly [number, number],
): RolloffBands {
  const reference = referencePower(hz, power, noisePower, referenceHz);
  const scaled = power.map((p) => p / reference);
  const noise = noisePower.map((n) => n / reference);
  const marginDb = scaled.map((p, k) => {
    const n = noise[k] ?? 0;
    if (p <= 0) return -Infinity;
    return n > 0 ? 10 * Math.log10(p / n) : Infinity;
  });
  return { hz, power: scaled, noisePower: noise, lines, marginDb };
}

/** Mean of the levels in dB over a range, as a power; what is below the noise counts as it. */
function referencePower(
  hz: Float64Array,
  power: Float64Array,
  noise: Float64Array,
  [low, high]: readonly [number, number],
): number {
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
  if (count === 0) throw new RangeError(`referenceHz must hold a band, got ${low} to ${high}`);
  return Math.exp(sum / count);
}

function peakIndex(samples: Float64Array): number {
  let best = 0;
  let at = 0;
  for (let n = 0; n < samples.length; n++) {
    const size = Math.abs(samples[n] ?? 0);
    if (!Number.isFinite(size)) throw new RangeError(`samples must be finite, got ${samples[n]}`);
    if (size > best) {
      best = size;
      at = n;
    }
  }
  if (best === 0) throw new RangeError('samples must hold a response, got silence');
  return at;
}

interface Cut {
  readonly samples: Float64Array;
  readonly start: number;
}

function cutAround(samples: Float64Array, sampleRate: number, peak: number): Cut {
  const start = Math.max(0, peak - Math.round(BEFORE_SECONDS * sampleRate));
  const end = Math.min(samples.length, peak + Math.round(AFTER_SECONDS * sampleRate));
  const cut = samples.slice(start, end);
  taper(cut, sampleRate, peak - start);
  return { samples: cut, start };
}

/** Half-Hann over the last 0.25 s (less when the tail is shorter). */
function taper(cut: Float64Array, sampleRate: number, peak: number): void {
  const length = Math.min(Math.round(TAPER_SECONDS * sampleRate), cut.length - 1 - peak);
  for (let n = 1; n <= length; n++) {
    const i = cut.length - n;
    cut[i] = (cut[i] ?? 0) * 0.5 * (1 - Math.cos((Math.PI * n) / (length + 1)));
  }
}

function widthHz(k: number): number {
  const half = 2 ** (0.5 / BANDS_PER_OCTAVE);
  return rolloffBandHz(k) * (half - 1 / half);
}

/** Mean of |X|² over each band; a line counts by the part of it that lies in the band. */
function bandPower(samples: Float64Array, size: number, sampleRate: number): Float64Array {
  const spectrum = realSpectrum(samples, size);
  const half = 2 ** (0.5 / BANDS_PER_OCTAVE);
  const spacing = sampleRate / size;
  return Float64Array.from({ length: BAND_COUNT }, (_, k) => {
    const low = rolloffBandHz(k) / half / spacing;
    const high = (rolloffBandHz(k) * half) / spacing;
    let sum = 0;
    for (let bin = Math.round(low); bin <= Math.round(high); bin++) {
      const share = Math.min(bin + 0.5, high) - Math.max(bin - 0.5, low);
      const re = spectrum[2 * bin] ?? 0;
      const im = spectrum[2 * bin + 1] ?? 0;
      sum += Math.max(share, 0) * (re * re + im * im);
    }
    return sum / (high - low);
  });
}

/** Noise power per band for a cut of `length`, averaged over as many stretches as there are. */
function noiseBands(
  samples: Float64Array,
  start: number,
  length: number,
  size: number,
  sampleRate: number,
): Float64Array {
  if (samples.length === 0) throw new RangeError('noise must hold samples, got none');
  const used = Math.min(length, samples.length);
  const from = Math.min(start, samples.length - used);
  const stretch = samples.slice(from, from + used);
  taper(stretch, sampleRate, 0);
  const raw = bandPower(stretch, size, sampleRate).map((p) => (p * length) / used);
  // One stretch gives one or two lines a band at the bottom: average over a quarter octave.
  return raw.map((own, k) => {
    let sum = 0;
    let count = 0;
    for (let j = Math.max(0, k - 1); j <= Math.min(raw.length - 1, k + 1); j++) {
      sum += raw[j] ?? 0;
      count++;
    }
    return Math.max(sum / count, 0.5 * own);
  });
}
