import { nextPowerOfTwo, realSpectrum, type HalfSpectrum } from '../fft/fft';
import type { ImpulseResponse } from '../response/impulse-response';
import { cutAroundPeak, cutLike, TAPER_SECONDS, type Cut } from './bass-cut';
import { measureDecay } from './measure-decay';

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
  /** Time of decay by 60 dB from 180 to 500 Hz, seconds; null when it cannot be read. */
  readonly decaySeconds: number | null;
}

export const BAND_COUNT = 61;
export const BANDS_PER_OCTAVE = 12;
export const LOWEST_BAND_HZ = 15;

const REFERENCE_HZ = [180, 500] as const;

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
  const cut = cutAroundPeak(ir.samples, sampleRate);
  const size = nextPowerOfTwo(Math.max(cut.samples.length, sampleRate / 0.75));
  const lineHz = sampleRate / size;
  const spectrum = realSpectrum(cut.samples, size);
  const total = bandPower(spectrum, lineHz);
  const noisePower = noise
    ? noiseBands(noise.samples, cut, size, sampleRate)
    : new Float64Array(BAND_COUNT);
  const hz = Float64Array.from({ length: BAND_COUNT }, (_, k) => rolloffBandHz(k));
  const seconds = cut.samples.length / sampleRate;
  const clearSeconds = Math.max(seconds - TAPER_SECONDS, 0.05);
  const inBand = (power: Float64Array): number =>
    power.reduce((sum, p, k) => ((hz[k] ?? 0) < REFERENCE_HZ[0] ? sum : sum + p * widthHz(k)), 0);
  const raw = {
    hz,
    power: total.map((p, k) => p - (noisePower[k] ?? 0)),
    noisePower,
    lines: hz.map((_, k) => Math.max(1, widthHz(k) * clearSeconds)),
    decaySeconds: measureDecay(spectrum, lineHz, seconds, inBand(noisePower) / inBand(total)),
  };
  return relateTo(raw, REFERENCE_HZ);
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
  const list = readings.map((one) => relateTo(one, referenceHz));
  const first = list[0];
  if (!first) throw new RangeError('readings must hold at least one, got none');
  const mean = (pick: (b: RolloffBands) => Float64Array): Float64Array =>
    Float64Array.from({ length: BAND_COUNT }, (_, k) => {
      let sum = 0;
      for (const bands of list) sum += pick(bands)[k] ?? 0;
      return sum / list.length;
    });
  const decays = list.flatMap(({ decaySeconds }) => decaySeconds ?? []);
  const logMean = decays.reduce((sum, one) => sum + Math.log(one), 0) / decays.length;
  const average = {
    hz: first.hz.slice(),
    power: mean((b) => b.power),
    noisePower: mean((b) => b.noisePower),
    lines: mean((b) => b.lines).map((n) => n * list.length),
    decaySeconds: decays.length > 0 ? Math.exp(logMean) : null,
  };
  return relateTo(average, referenceHz);
}

/** Scales powers to their mean level over `referenceHz` and reads the margins. */
function relateTo(
  raw: Omit<RolloffBands, 'marginDb'>,
  referenceHz: readonly [number, number],
): RolloffBands {
  const reference = referencePower(raw.hz, raw.power, raw.noisePower, referenceHz);
  const power = raw.power.map((p) => p / reference);
  const noisePower = raw.noisePower.map((n) => n / reference);
  const marginDb = power.map((p, k) => {
    const n = noisePower[k] ?? 0;
    if (p <= 0) return -Infinity;
    return n > 0 ? 10 * Math.log10(p / n) : Infinity;
  });
  return { ...raw, power, noisePower, marginDb };
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

function widthHz(k: number): number {
  const half = 2 ** (0.5 / BANDS_PER_OCTAVE);
  return rolloffBandHz(k) * (half - 1 / half);
}

/** Mean of |X|² over each band; a line counts by the part of it that lies in the band. */
function bandPower(spectrum: HalfSpectrum, lineHz: number): Float64Array {
  const half = 2 ** (0.5 / BANDS_PER_OCTAVE);
  return Float64Array.from({ length: BAND_COUNT }, (_, k) => {
    const low = rolloffBandHz(k) / half / lineHz;
    const high = (rolloffBandHz(k) * half) / lineHz;
    let sum = 0;
    for (let line = Math.round(low); line <= Math.round(high); line++) {
      const share = Math.min(line + 0.5, high) - Math.max(line - 0.5, low);
      const re = spectrum[2 * line] ?? 0;
      const im = spectrum[2 * line + 1] ?? 0;
      sum += Math.max(share, 0) * (re * re + im * im);
    }
    return sum / (high - low);
  });
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
  return raw.map((own, k) => {
    const around = raw.subarray(Math.max(0, k - 1), k + 2);
    const mean = around.reduce((sum, p) => sum + p, 0) / around.length;
    return scale * Math.max(mean, 0.5 * own);
  });
}
