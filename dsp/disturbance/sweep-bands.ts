import { sweepRateSeconds, type SweepSpec } from '../signal/sweep';
import type { ImpulseResponse } from '../response/impulse-response';
import { bandTiles, type BandTiles } from './band-tiles';

/** What a segment's own response is in one third-octave. */
export interface SweepBand {
  /** Whether the sweep passes the whole band, so that a response is known. */
  readonly swept: boolean;
  /** Mean square per sample in the capture → energy per sample of the response. */
  readonly gain: number;
  /** Energy of the response in its window, the take's own noise taken off. */
  readonly energy: number;
  /** Energy the take's own noise leaves in that window. */
  readonly noise: number;
  /** Seconds in which the response decays by 60 dB. */
  readonly decaySeconds: number;
}

const usualDecaySeconds = 0.6;
const leastDecaySeconds = 0.15;
const mostDecaySeconds = 1.6;
/** Fall that is timed, and what is added because decays are not straight. */
const fallDb = 15;
const caution = 1.3;
/** The peak of a band lies so near to that of the whole, and half its window. */
const nearSeconds = 0.1;

/**
 * Response, noise and decay of each third-octave. `floors` holds the mean square of the take's own
 * noise per band. Decay: see decayOf; a band that does not show it has that of the bands beside it.
 */
export function sweepBands(
  ir: ImpulseResponse,
  sweep: SweepSpec,
  floors: Float64Array,
  arrivalSeconds: number,
): SweepBand[] {
  const tiles = bandTiles(ir.samples, ir.sampleRate);
  const decays = decaysOf(tiles, ir, sweep, floors, arrivalSeconds);
  return tiles.bands.map(({ midHz, lowHz, highHz }, b) => {
    const gain = powerGain(sweep, midHz);
    const noise = (floors[b] ?? 0) * gain * ir.samples.length;
    const whole = tiles.hop * sumOf(tiles.power, b * tiles.frames, (b + 1) * tiles.frames);
    return {
      swept: lowHz >= 1.2 * sweep.startHz && highHz <= 0.93 * sweep.endHz,
      gain,
      energy: Math.max(whole - noise, 0),
      noise,
      decaySeconds: decays[b] ?? usualDecaySeconds,
    };
  });
}

/** Sum of values[from … to). */
function sumOf(values: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let n = from; n < to; n++) sum += values[n] ?? 0;
  return sum;
}

/** 1/|X|² of an endless sweep, |X|² = L·fs²/4f. */
function powerGain(sweep: SweepSpec, hz: number): number {
  return (4 * hz) / (sweepRateSeconds(sweep) * sweep.sampleRate ** 2);
}

function decaysOf(
  tiles: BandTiles,
  ir: ImpulseResponse,
  sweep: SweepSpec,
  floors: Float64Array,
  arrivalSeconds: number,
): number[] {
  const frameSeconds = tiles.hop / ir.sampleRate;
  const arrival = Math.round((ir.zeroIndex / ir.sampleRate + arrivalSeconds) / frameSeconds);
  const own = tiles.bands.map(({ midHz, windowSeconds }, b) => {
    const noise = (floors[b] ?? 0) * powerGain(sweep, midHz);
    const row = tiles.power.subarray(b * tiles.frames, (b + 1) * tiles.frames);
    return decayOf(row, noise, arrival, frameSeconds, windowSeconds);
  });
  const known = own.filter((value) => value !== null).sort((a, b) => a - b);
  const usual = known[known.length >> 1] ?? usualDecaySeconds;
  return own.map((value, b) => {
    const near = own.slice(Math.max(0, b - 2), b + 3).filter((value) => value !== null);
    near.sort((x, y) => x - y);
    const middle = near[near.length >> 1] ?? usual;
    const limit = Math.min(mostDecaySeconds, 2.5 * Math.max(usual, leastDecaySeconds));
    return Math.min(Math.max(caution * Math.max(middle, value ?? 0), leastDecaySeconds), limit);
  });
}

/**
 * From the time in which the response first falls by 15 dB: later, something else may sound.
 * Null when noise comes first.
 */
function decayOf(
  row: Float64Array,
  noise: number,
  arrival: number,
  frameSeconds: number,
  windowSeconds: number,
): number | null {
  const last = row.length - 1;
  const smooth = new Float64Array(row.length);
  // Reading beyond an array's ends is slow.
  for (let n = 0; n <= last; n++) {
    const end = Math.min(n + 2, last);
    let sum = 0;
    for (let m = Math.max(0, n - 2); m <= end; m++) sum += row[m] ?? 0;
    smooth[n] = sum / 5;
  }
  const reach = Math.ceil((nearSeconds + windowSeconds / 2) / frameSeconds);
  let peak = arrival;
  for (let n = Math.max(0, arrival - reach); n <= Math.min(arrival + reach, last); n++)
    if ((smooth[n] ?? 0) > (smooth[peak] ?? 0)) peak = n;
  const target = (smooth[peak] ?? 0) * 10 ** (-fallDb / 10);
  if (target < 2 * noise) return null;
  let n = peak;
  while (n < smooth.length && (smooth[n] ?? 0) > target) n++;
  // The frame's own window and the mean over frames take a part of the time.
  const seconds = (n - peak) * frameSeconds - 0.3 * windowSeconds - frameSeconds;
  return (60 / fallDb) * Math.max(seconds, frameSeconds);
}
