import type { ImpulseResponse } from '../response/impulse-response';
import { delaySeconds } from '../response/impulse-response';
import { analyticBand, fineEnvelope, magnitudes } from './analytic-band';
import type { Arrival, ArrivalOptions } from './arrival';
import { findCarriedBand } from './carried-band';

const standardBandHz = [3000, 18_000] as const;
/** How far before the strongest peak an earlier arrival is looked for. */
const searchSeconds = 0.015;
const weakestDb = 20;
const noiseGuardDb = 14;
/** An arrival is at least this share of the largest value in the time after it. */
const sidelobeShare = 0.35;
const sidelobeSeconds = 0.5e-3;
/** The noise is read in so much of the response before the search begins, or in its end. */
const noiseSeconds = 0.1;
const leastNoiseSeconds = 0.002;
const fineFactor = 8;
/** The place is refined in this part of the band and no further away than so many seconds. */
const upperLowHz = 6000;
const upperReachSeconds = 0.1e-3;
/** A band counts as carried when its envelope rises so far over its noise, … */
const leastMarginDb = 20;
/** … and is not so far below the response's largest sample. */
const deepestDb = 50;
/** Half the 90 % interval without noise, in the standard band: what reflections and crossovers do. */
const roomSeconds = 5e-6;

/**
 * First arrival of a speaker: zero-phase band 3 to 18 kHz, analytic envelope on an 8 times finer
 * grid; in the 15 ms before its largest value, the first local maximum within 20 dB of it, 14 dB
 * over the noise before, and at least 0.35 of the largest value in the 0.5 ms after; parabola
 * through its neighbours. A response that carries nothing there (a sub, a speaker without treble)
 * is read in the uppermost band that it does carry, with times and interval in proportion to that
 * band's width. Null when no octave stands above the noise. Throws RangeError for a band that is
 * none. Common practice.
 */
export function findArrival(ir: ImpulseResponse, options: ArrivalOptions = {}): Arrival | null {
  const wanted = [options.lowHz ?? standardBandHz[0], options.highHz ?? standardBandHz[1]] as const;
  const standard = readBand(ir, wanted, false);
  if (standard) return standard;
  const largest = largestIndex(ir.samples);
  const seconds = (s: number): number => Math.round(s * ir.sampleRate);
  const before: [number, number] = [
    Math.max(0, largest - seconds(0.4)),
    largest - seconds(searchSeconds),
  ];
  const after: [number, number] = [ir.samples.length - seconds(0.2), ir.samples.length];
  const quietest = [before, after]
    .filter(([from, to]) => from >= 0 && to - from >= seconds(0.01))
    .sort((a, b) => powerOf(ir.samples, a) - powerOf(ir.samples, b))[0];
  if (!quietest) return null;
  const heard: [number, number] = [largest - seconds(0.02), largest + seconds(0.2)];
  const carried = findCarriedBand(ir, heard, quietest);
  return carried ? readBand(ir, carried, true) : null;
}

function readBand(
  ir: ImpulseResponse,
  bandHz: readonly [number, number],
  adapted: boolean,
): Arrival | null {
  const { samples, sampleRate } = ir;
  const complex = analyticBand(samples, sampleRate, bandHz[0], Math.min(bandHz[1], sampleRate / 2));
  const envelope = magnitudes(complex);
  const coarse = largestIndex(envelope);
  const scale = Math.max(1, widthOf(standardBandHz) / widthOf(bandHz));
  const search = searchSeconds * Math.min(scale, 20);
  const noise = noiseBefore(complex, coarse, sampleRate, search, adapted);
  const whole = largestAround(samples, coarse, Math.round(0.002 * scale * sampleRate));
  if (noise === null || !(whole > 0)) return null;
  const coarsePeak = envelope[coarse] ?? 0;
  const margin = decibels(coarsePeak / noise);
  if (margin < leastMarginDb || decibels(coarsePeak / whole) < -deepestDb) return null;
  const factor = scale > fineFactor ? 1 : fineFactor;
  const guard = Math.round(0.001 * sampleRate * scale) + 64;
  const from = coarse - Math.round(search * sampleRate) - guard;
  const fine =
    factor === 1
      ? envelope.subarray(Math.max(0, from))
      : fineEnvelope(complex, from, coarse - from + guard, factor);
  const origin = factor === 1 ? Math.max(0, from) : from;
  const start = Math.round((coarse - origin - search * sampleRate) * factor);
  const strongest = largestIndex(fine.subarray(0, Math.round((coarse - origin + 2) * factor)));
  const peak = fine[strongest] ?? 0;
  const threshold = Math.max(peak * 10 ** (-weakestDb / 20), noise * 10 ** (noiseGuardDb / 20));
  const reach = Math.round(sidelobeSeconds * scale * sampleRate * factor);
  const first = firstMaximum(fine, Math.max(1, start), strongest, threshold, reach);
  const place = (at: number): number => origin + refine(fine, at) / factor;
  const index = adapted ? place(first) : refineUpward(ir, place(first), noise, bandHz);
  const half = halfInterval(decibels((fine[first] ?? 0) / noise), scale, widthOf(bandHz));
  const seconds = delaySeconds(ir, index);
  const strongestIndex = place(strongest);
  return {
    index,
    seconds,
    interval: [seconds - half, seconds + half],
    strongestIndex,
    strongestSeconds: delaySeconds(ir, strongestIndex),
    firstDb: decibels((fine[first] ?? 0) / peak),
    bandHz,
    bandAdapted: adapted,
    bandMarginDb: margin,
    peakToNoiseDb: decibels(whole / wholeNoise(samples, coarse, sampleRate, search)),
    earlierPossible: threshold > 1.0001 * peak * 10 ** (-weakestDb / 20),
  };
}

/**
 * The nearest maximum of the envelope above 6 kHz, where a speaker's crossover no longer delays
 * part of the sound, if one lies within 0.1 ms and well over the noise; else the place given.
 */
function refineUpward(
  ir: ImpulseResponse,
  index: number,
  noise: number,
  [lowHz, highHz]: readonly [number, number],
): number {
  if (!(lowHz < upperLowHz && highHz > 1.5 * upperLowHz)) return index;
  const half = Math.round(0.012 * ir.sampleRate);
  const from = Math.max(0, Math.round(index) - half);
  const piece = ir.samples.slice(from, Math.round(index) + half);
  const top = Math.min(highHz, ir.sampleRate / 2);
  const complex = analyticBand(piece, ir.sampleRate, upperLowHz, top);
  const near = 200;
  const start = Math.max(0, Math.round(index) - from - near);
  const fine = fineEnvelope(complex, start, 2 * near, fineFactor);
  const middle = Math.round((index - from - start) * fineFactor);
  const reach = Math.round(upperReachSeconds * ir.sampleRate * fineFactor);
  const least = noise * 10 ** (leastMarginDb / 20);
  let best = index;
  for (let n = middle - reach; n <= middle + reach; n++) {
    const value = fine[n] ?? 0;
    if (value < least || value < (fine[n - 1] ?? 0) || value <= (fine[n + 1] ?? 0)) continue;
    const at = from + start + refine(fine, n) / fineFactor;
    if (best === index || Math.abs(at - index) < Math.abs(best - index)) best = at;
  }
  return best;
}

/** First local maximum that is strong enough and no mere shoulder of what follows. */
function firstMaximum(
  envelope: Float64Array,
  from: number,
  strongest: number,
  threshold: number,
  reach: number,
): number {
  for (let n = from; n < strongest; n++) {
    const value = envelope[n] ?? 0;
    if (value < threshold || value < (envelope[n - 1] ?? 0) || value <= (envelope[n + 1] ?? 0)) {
      continue;
    }
    let next = 0;
    for (let k = n; k <= n + reach; k++) next = Math.max(next, envelope[k] ?? 0);
    if (value >= sidelobeShare * next) return n;
  }
  return strongest;
}

/** Vertex of the parabola through an entry and its neighbours. */
function refine(values: Float64Array, at: number): number {
  const before = values[at - 1] ?? 0;
  const here = values[at] ?? 0;
  const after = values[at + 1] ?? 0;
  const bend = before - 2 * here + after;
  return bend < 0 ? at + Math.min(0.5, Math.max(-0.5, (before - after) / (2 * bend))) : at;
}

/** Room and noise together; both grow as the band narrows. */
function halfInterval(marginDb: number, scale: number, widthHz: number): number {
  const noise = (1.645 * Math.sqrt(12)) / (2 * Math.PI * widthHz * 10 ** (marginDb / 20));
  return Math.hypot(roomSeconds * scale * (scale > 1 ? 10 : 1), noise);
}

/** Rms of the band (its real part) before the arrival or, failing that, in the end; null: no room. */
function noiseBefore(
  complex: Float64Array,
  peak: number,
  sampleRate: number,
  search: number,
  adapted: boolean,
): number | null {
  const stretch = noiseStretches(complex.length / 2, peak, sampleRate, search);
  const levels = stretch.map(([from, to]) => {
    let sum = 0;
    for (let n = 2 * from; n < 2 * to; n++) sum += (complex[n] ?? 0) ** 2;
    return Math.sqrt(sum / (2 * (to - from)));
  });
  const level = adapted ? Math.min(...levels) : levels[0];
  if (level === undefined || !Number.isFinite(level)) return null;
  let peakLevel = 0;
  for (const value of complex) peakLevel = Math.max(peakLevel, Math.abs(value));
  return Math.max(level, 1e-8 * peakLevel, 1e-300);
}

function wholeNoise(
  samples: Float64Array,
  peak: number,
  sampleRate: number,
  search: number,
): number {
  const stretch = noiseStretches(samples.length, peak, sampleRate, search)[0];
  const rms = stretch ? Math.sqrt(powerOf(samples, stretch)) : 0;
  return Math.max(rms, 1e-8 * Math.abs(samples[largestIndex(samples)] ?? 0), 1e-300);
}

/** Where the noise can be read, the best place first. */
function noiseStretches(
  length: number,
  peak: number,
  sampleRate: number,
  search: number,
): [number, number][] {
  const end = peak - Math.round(search * sampleRate);
  const before: [number, number] = [Math.max(0, end - Math.round(noiseSeconds * sampleRate)), end];
  const after: [number, number] = [length - Math.round(noiseSeconds * sampleRate), length];
  const least = leastNoiseSeconds * sampleRate;
  return [before, after].filter(
    ([from, to]) => from >= 0 && to - from >= least && (to <= peak || from > peak),
  );
}

function powerOf(samples: Float64Array, [from, to]: readonly [number, number]): number {
  let sum = 0;
  for (let n = from; n < to; n++) sum += (samples[n] ?? 0) ** 2;
  return sum / Math.max(1, to - from);
}

function largestIndex(values: Float64Array): number {
  let best = 0;
  for (let n = 1; n < values.length; n++) {
    if (Math.abs(values[n] ?? 0) > Math.abs(values[best] ?? 0)) best = n;
  }
  return best;
}

function largestAround(values: Float64Array, middle: number, reach: number): number {
  let most = 0;
  for (let n = Math.max(0, middle - reach); n <= middle + reach; n++) {
    most = Math.max(most, Math.abs(values[n] ?? 0));
  }
  return most;
}

function widthOf([low, high]: readonly [number, number]): number {
  return high - low;
}

function decibels(ratio: number): number {
  return 20 * Math.log10(Math.max(ratio, 1e-15));
}
