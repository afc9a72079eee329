import { advance } from '../fft/advance';
import { addSpectrum, multiplyConjugate } from '../fft/convolve';
import { nextPowerOfTwo, realSignal, realSpectrum, type HalfSpectrum } from '../fft/fft';
import { bandGains, copyFinite } from './baseband';
import { findCorrelationPeak } from './correlation-peak';
import type { Samples } from '../signal/samples';

/** What every mark sounds like in the room: the mean of all, each moved onto the others. */
export interface MarkTemplate {
  readonly samples: Float64Array;
  /** samples[leadSamples] stands at the position of the mark. */
  readonly leadSamples: number;
}

export interface AlignedMark {
  /** Capture sample, fractional. */
  readonly position: number;
  /** Energy of the mark over that of what the others do not explain, in the mark's band, dB. */
  readonly snrDb: number;
  /** Correlation with the template, −1 … 1. */
  readonly match: number;
  /** Standard deviation of the position that the noise alone causes, samples. */
  readonly deviation: number;
}

export interface AlignOptions {
  readonly sampleRate: number;
  readonly lowHz: number;
  readonly highHz: number;
  /** Window of the template around the mark's position. */
  readonly beforeSeconds: number;
  readonly afterSeconds: number;
}

const rounds = 4;
const edgeSeconds = 0.002;
const searchSeconds = 0.25e-3;

/**
 * Positions of marks relative to each other, to a small part of a sample. `starts` are coarse
 * positions (within some samples), `first` the index of the best one, which is the first template;
 * then the template is the mean of all that resemble it, as aligned, and they are aligned again, four
 * rounds in all. Only differences between positions mean something.
 */
export function alignMarks(
  capture: Samples,
  starts: readonly number[],
  first: number,
  options: AlignOptions,
): { marks: AlignedMark[]; template: MarkTemplate } {
  const { sampleRate } = options;
  const edge = Math.round(edgeSeconds * sampleRate);
  const lead = Math.round(options.beforeSeconds * sampleRate);
  const width = lead + Math.round(options.afterSeconds * sampleRate);
  const searchSamples = Math.ceil(searchSeconds * sampleRate);
  const size = nextPowerOfTwo(width + 2 * edge + 2 * searchSamples);
  const pad = Math.floor((size - width) / 2);
  const gains = bandGains(size, sampleRate, options.lowHz, options.highHz);
  const origins = starts.map((start) => Math.round(start) - lead - pad);
  const spectra = origins.map((origin) => bandSpectrum(capture, origin, size, edge, gains));
  const shifts = new Array<number>(starts.length).fill(0);
  let template = windowed(spectra[first] ?? new Float64Array(size + 2), pad, width, edge);
  let matches: number[] = [];
  for (let round = 0; round < rounds; round++) {
    const templateSpectrum = realSpectrum(template, size);
    matches = spectra.map((spectrum, k) => {
      const cross = spectrum.slice();
      multiplyConjugate(cross, templateSpectrum);
      const peak = findCorrelationPeak(cross, size, searchSamples);
      shifts[k] = peak.lag;
      return peak.value;
    });
    const best = matches.reduce((most, value) => Math.max(most, value), 0);
    const mean = new Float64Array(size + 2);
    let count = 0;
    for (const [k, spectrum] of spectra.entries()) {
      if ((matches[k] ?? 0) < 0.5 * best) continue;
      addSpectrum(mean, shifted(spectrum, shifts[k] ?? 0, size));
      count++;
    }
    if (count > 0 && round < rounds - 1) {
      for (let n = 0; n < mean.length; n++) mean[n] = (mean[n] ?? 0) / count;
      template = windowed(mean, pad, width, edge);
    }
  }
  const bandShare = (2 * (options.highHz - options.lowHz)) / sampleRate;
  const shape = { template, slope: slopeEnergy(template, size), width, bandShare };
  const marks = spectra.map((spectrum, k): AlignedMark => {
    const shift = shifts[k] ?? 0;
    const moved = shifted(spectrum, shift, size);
    const judged = judge(windowed(moved, pad, width, edge), shape, starts.length);
    return { position: (origins[k] ?? 0) + lead + pad + shift, ...judged };
  });
  return {
    marks,
    template: { samples: template.slice(pad, pad + width), leadSamples: lead },
  };
}

interface Shape {
  readonly template: Float64Array;
  readonly slope: number;
  readonly width: number;
  readonly bandShare: number;
}

/** Splits an aligned mark into template and rest; the rest is scaled up for what the mean took in. */
function judge(mark: Float64Array, shape: Shape, count: number): Omit<AlignedMark, 'position'> {
  const { template, slope, width, bandShare } = shape;
  let product = 0;
  let own = 0;
  let energy = 0;
  for (let n = 0; n < template.length; n++) {
    const value = template[n] ?? 0;
    const sample = mark[n] ?? 0;
    product += value * sample;
    own += sample * sample;
    energy += value * value;
  }
  if (!(own > 0 && energy > 0)) return { snrDb: 0, match: 0, deviation: Infinity };
  const gain = product / energy;
  const explained = gain * product;
  const left = Math.max(own - explained, 1e-12 * own) * (count > 1 ? count / (count - 1) : 1);
  const density = left / (width * bandShare);
  return {
    snrDb: 10 * Math.log10(Math.max(explained, 1e-12 * own) / left),
    match: product / Math.sqrt(own * energy),
    deviation: gain === 0 ? Infinity : Math.sqrt(density / (gain * gain * slope)),
  };
}

function bandSpectrum(
  capture: Samples,
  origin: number,
  size: number,
  edge: number,
  gains: Float64Array,
): HalfSpectrum {
  const piece = new Float64Array(size);
  copyFinite(capture, origin, piece);
  taper(piece, 0, size, edge);
  const spectrum = realSpectrum(piece, size);
  for (let bin = 0; bin < gains.length; bin++) {
    const gain = gains[bin] ?? 0;
    spectrum[2 * bin] = gain * (spectrum[2 * bin] ?? 0);
    spectrum[2 * bin + 1] = gain * (spectrum[2 * bin + 1] ?? 0);
  }
  return spectrum;
}

/** The signal of a spectrum, 0 outside its `width` samples from `start` on. */
function windowed(spectrum: HalfSpectrum, start: number, width: number, edge: number) {
  const signal = realSignal(spectrum, spectrum.length - 2);
  signal.fill(0, 0, start);
  signal.fill(0, start + width);
  taper(signal, start, start + width, edge);
  return signal;
}

function taper(signal: Float64Array, from: number, to: number, edge: number): void {
  for (let n = 0; n < edge; n++) {
    const gain = 0.5 * (1 - Math.cos((Math.PI * (n + 0.5)) / edge));
    signal[from + n] = gain * (signal[from + n] ?? 0);
    signal[to - 1 - n] = gain * (signal[to - 1 - n] ?? 0);
  }
}

/** The spectrum, moved `shift` samples to the left. */
function shifted(spectrum: HalfSpectrum, shift: number, size: number): HalfSpectrum {
  const moved = spectrum.slice();
  advance(moved, shift, size);
  return moved;
}

/** Energy of the derivative per sample, Σ ω²|X|² over both halves of the spectrum, over size. */
function slopeEnergy(signal: Float64Array, size: number): number {
  const spectrum = realSpectrum(signal, size);
  let sum = 0;
  for (let bin = 1; bin < size / 2; bin++) {
    const omega = (2 * Math.PI * bin) / size;
    const re = spectrum[2 * bin] ?? 0;
    const im = spectrum[2 * bin + 1] ?? 0;
    sum += 2 * omega * omega * (re * re + im * im);
  }
  return sum / size;
}
