import { passingRoom } from '../fft/fft';
import type { ImpulseResponse } from '../response/impulse-response';
import { delaySeconds } from '../response/impulse-response';
import { fadeEnds } from '../signal/fade';
import { scratch } from '../signal/scratch';
import { analyticBand, fineEnvelope, magnitudes } from './analytic-band';
import type { Arrival, ArrivalOptions } from './arrival';
import { findCarriedBand } from './carried-band';
import { firstCrossing, firstPeak, largestIndex, refinePeak } from './envelope-peak';
import { refineUpward } from './refine-upward';
import { meanSquare, noiseStretches } from './response-noise';

const standardBandHz = [3000, 18_000] as const;
/** How far before the strongest peak an earlier arrival is looked for. */
const searchSeconds = 0.015;
const weakestDb = 20;
const noiseGuardDb = 14;
/** An arrival is at least this share of the largest value in the time after it. */
const sidelobeShare = 0.35;
const sidelobeSeconds = 0.5e-3;
const fineFactor = 8;
/** A band counts as carried when its envelope rises so far over its noise, … */
const leastMarginDb = 20;
/** … is not so far below the response's largest sample, … */
const deepestDb = 50;
/** … and its treble lies no farther than this from that sample. */
const farSeconds = 0.1;
/** … and carried over at least this share of its width. */
const leastShare = 0.2;
/** Half the 90 % interval without noise: what reflections and crossovers do. */
const roomSeconds = 5e-6;
/** The same in another band, times its width. */
const roomCycles = 0.35;
/** The same below the treble, where crossovers delay the sound by an unknown time. */
const crossoverCycles = 0.7;
/** Rise of a peak from half its height, times the width of a band that is carried whole. */
const riseCycles = 0.54;
/** In a band that ends below this the room builds up slowly: its onset counts, not a maximum. */
const bassHz = 1000;
const onsetShare = 0.3;
const onsetSearchSeconds = 0.15;
const onsetClearSeconds = 0.01;
/** What lies before and after the largest sample is enough for the standard band. */
const nearSeconds = [0.25, 0.4] as const;
const nearFadeSeconds = 0.02;

/**
 * First arrival of a speaker: zero-phase band 3 to 18 kHz, analytic envelope on an 8 times finer
 * grid; in the 15 ms before its largest value, the first local maximum within 20 dB of it, 14 dB
 * over the noise before, and at least 0.35 of the largest value in the 0.5 ms after; parabola
 * through its neighbours; then the nearest maximum above 6 kHz, where that stands clear.
 *
 * A response that carries nothing there is read in the uppermost band that it does carry, with an
 * interval in proportion; below 1 kHz (subs) the arrival is where the envelope first passes 0.3 of
 * its largest value. Null when no octave stands above the noise. Throws RangeError for a band that
 * is none. Common practice.
 */
export function findArrival(ir: ImpulseResponse, options: ArrivalOptions = {}): Arrival | null {
  const wanted = [options.lowHz ?? standardBandHz[0], options.highHz ?? standardBandHz[1]] as const;
  const { samples, sampleRate } = ir;
  const largest = largestIndex(samples);
  const standard = readNear(ir, largest, wanted);
  if (standard) return standard;
  const quietest = noiseStretches(samples.length, largest, sampleRate, searchSeconds).sort(
    (a, b) => meanSquare(samples, a) - meanSquare(samples, b),
  )[0];
  if (!quietest) return null;
  const heard = [largest - 0.02 * sampleRate, largest + 0.2 * sampleRate].map(Math.round);
  const carried = findCarriedBand(ir, [heard[0] ?? 0, heard[1] ?? 0], quietest);
  return carried ? readBand(ir, carried, true) : null;
}

/** readBand on what lies around the largest sample, faded where it is cut; spares long transforms. */
function readNear(
  ir: ImpulseResponse,
  largest: number,
  bandHz: readonly [number, number],
): Arrival | null {
  const { samples, sampleRate, zeroIndex } = ir;
  const from = Math.max(0, largest - Math.round(nearSeconds[0] * sampleRate));
  const to = Math.min(samples.length, largest + Math.round(nearSeconds[1] * sampleRate));
  const near = samples.slice(from, to);
  const fade = Math.min(Math.round(nearFadeSeconds * sampleRate), near.length >> 1);
  fadeEnds(near, from > 0 ? fade : 0, to < samples.length ? fade : 0);
  const found = readBand({ samples: near, sampleRate, zeroIndex: zeroIndex - from }, bandHz, false);
  if (!found || from === 0) return found;
  const { index, strongestIndex } = found;
  return { ...found, index: index + from, strongestIndex: strongestIndex + from };
}

const envelopeRoom = scratch();

function readBand(
  ir: ImpulseResponse,
  bandHz: readonly [number, number],
  adapted: boolean,
): Arrival | null {
  const { samples, sampleRate } = ir;
  const width = bandHz[1] - bandHz[0];
  const highHz = Math.min(bandHz[1], sampleRate / 2);
  const complex = analyticBand(samples, sampleRate, bandHz[0], highHz, passingRoom);
  const envelope = magnitudes(complex, envelopeRoom);
  const coarse = largestIndex(envelope);
  const scale = Math.max(1, (standardBandHz[1] - standardBandHz[0]) / width);
  const bass = bandHz[1] < bassHz;
  const search = bass ? onsetSearchSeconds : searchSeconds * Math.min(scale, 4);
  const noise = bandNoise(complex, coarse, sampleRate, search, adapted);
  const whole = largestAround(samples, coarse, Math.round(0.002 * scale * sampleRate));
  if (noise === null || !(whole > 0)) return null;
  const top = envelope[coarse] ?? 0;
  const margin = decibels(top / noise);
  if (margin < leastMarginDb || decibels(top / whole) < -deepestDb) return null;
  // Where a response is cut, its bass leaves a trace of treble far from any arrival.
  const loudest = largestIndex(samples);
  const faint = decibels(top / Math.abs(samples[loudest] ?? 0)) < -deepestDb;
  const far = Math.abs(coarse - loudest) > farSeconds * sampleRate;
  if (!adapted && (faint || far)) return null;
  const grid = bass
    ? { fine: envelope, origin: 0, factor: 1 }
    : refineGrid(complex, coarse, Math.round((search + 0.001 * scale) * sampleRate));
  const { fine, origin, factor } = grid;
  const middle = (coarse - origin) * factor;
  const strongest = largestIndex(fine.subarray(0, middle + 2 * factor));
  const peak = fine[strongest] ?? 0;
  const least = Math.max(peak * 10 ** (-weakestDb / 20), noise * 10 ** (noiseGuardDb / 20));
  const start = Math.round(middle - search * sampleRate * factor);
  // What the response carries of the band may be narrower, its side lobes longer.
  const heard = bass ? width : carriedWidth(fine, strongest, sampleRate * factor, width);
  if (!adapted && heard < leastShare * width) return null;
  const reach = Math.round(((sidelobeSeconds * scale * width) / heard) * sampleRate * factor);
  const first = bass
    ? firstCrossing(fine, start, strongest, Math.max(least, onsetShare * peak))
    : firstPeak(fine, start, strongest, least, sidelobeShare, reach);
  const level = fine[Math.round(first)] ?? 0;
  const place = (at: number): number => origin + refinePeak(fine, at) / factor;
  const clear = noise * 10 ** (leastMarginDb / 20);
  const index = bass
    ? origin + first / factor
    : adapted || bandHz[0] >= bandHz[1] / 2
      ? place(first)
      : refineUpward(ir, place(first), highHz, clear);
  const carried = bass ? width : carriedWidth(fine, first, sampleRate * factor, width);
  const hiss = (1.645 * Math.sqrt(12)) / (2 * Math.PI * carried * Math.max(1, level / noise));
  const room = adapted && !bass ? crossoverCycles / carried : roomTime(carried);
  const half = Math.hypot(room, hiss);
  const seconds = delaySeconds(ir, index);
  const strongestIndex = place(strongest);
  return {
    index,
    seconds,
    interval: [seconds - half, seconds + half],
    strongestIndex,
    strongestSeconds: delaySeconds(ir, strongestIndex),
    firstDb: decibels(level / peak),
    bandHz,
    bandAdapted: adapted,
    bandMarginDb: margin,
    peakToNoiseDb: decibels(
      whole /
        (bass
          ? wholeNoise(samples, Math.round(index), sampleRate, onsetClearSeconds, whole)
          : wholeNoise(samples, coarse, sampleRate, search, whole)),
    ),
    earlierPossible: least > 1.0001 * peak * 10 ** (-weakestDb / 20),
  };
}

/** Bandwidth that the rise of a peak from half its height shows, Hz; at most `width`. */
function carriedWidth(envelope: Float64Array, top: number, rate: number, width: number): number {
  const half = (envelope[top] ?? 0) / 2;
  let n = top;
  while (n > 0 && (envelope[n] ?? 0) > half) n--;
  const rise = (top - n) / rate;
  return rise * width > 1.5 * riseCycles ? riseCycles / rise : width;
}

/** From the standard band's figure, which rests on many speakers, to that of narrower bands. */
function roomTime(width: number): number {
  const narrow = roomCycles / width;
  const share = Math.min(1, Math.max(0, Math.log(15_000 / width) / Math.log(10)));
  return roomSeconds ** (1 - share) * narrow ** share;
}

/** The envelope around the strongest peak, 8 times finer. */
function refineGrid(complex: Float64Array, coarse: number, before: number) {
  const origin = coarse - before - 64;
  const fine = fineEnvelope(complex, origin, before + 64 + 160, fineFactor);
  return { fine, origin, factor: fineFactor };
}

/** Rms of the band (of its real part) in the noise; null when there is no room to read it. */
function bandNoise(
  complex: Float64Array,
  peak: number,
  sampleRate: number,
  clear: number,
  quietest: boolean,
): number | null {
  const stretches = noiseStretches(complex.length / 2, peak, sampleRate, clear);
  const powers = stretches.map(([from, to]) => meanSquare(complex, [2 * from, 2 * to]));
  const power = quietest ? Math.min(...powers) : powers[0];
  if (power === undefined || !Number.isFinite(power)) return null;
  const top = Math.hypot(complex[2 * peak] ?? 0, complex[2 * peak + 1] ?? 0);
  return Math.max(Math.sqrt(power), 1e-8 * top, 1e-300);
}

function wholeNoise(
  samples: Float64Array,
  peak: number,
  sampleRate: number,
  clear: number,
  top: number,
): number {
  const stretch = noiseStretches(samples.length, peak, sampleRate, clear)[0];
  return Math.max(stretch ? Math.sqrt(meanSquare(samples, stretch)) : 0, 1e-8 * top);
}

function largestAround(values: Float64Array, middle: number, reach: number): number {
  let most = 0;
  for (let n = Math.max(0, middle - reach); n <= middle + reach; n++) {
    most = Math.max(most, Math.abs(values[n] ?? 0));
  }
  return most;
}

function decibels(ratio: number): number {
  return 20 * Math.log10(Math.max(ratio, 1e-15));
}
