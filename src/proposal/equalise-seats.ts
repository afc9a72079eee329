import { smoothOnGrid } from '../../dsp/bass/log-band';
import type { SeatTransfers } from '../../dsp/bass/transfer';
import { powerToDb } from '../../dsp/level/decibels';
import { sectionsResponse } from '../../dsp/filter/biquad';
import { magnitude } from '../../dsp/filter/complex';
import { equaliserSection } from '../../dsp/filter/equaliser';
import type { EqualiserBand } from './equaliser';

/** Levels of one channel at every seat about its own mean, dB, on a stretch of a grid. */
export interface SeatLevels {
  readonly hz: Float64Array;
  readonly seats: readonly Float64Array[];
}

const smoothing = 6;
const sampleRate = 48000;
const qs = [1, 2, 3, 4, 6, 8] as const;
const cutsDb = [-9, -8, -7, -6, -5, -4, -3, -2, -1] as const;
const boostsDb = [1, 2, 3] as const;
/** Centres are tried so many grid steps apart. */
const stride = 4;
/** A boost only where every seat is at least so far down, and they differ by no more, dB. */
const downDb = 1;
const alikeDb = 2;
/** A cut only where no seat is already so far down, dB: that is a null which moves. */
const nullDb = 3;
/** A band that lowers the deviation by less is not worth typing, dB. */
const leastGainDb = 0.1;

/** Levels from lowHz to highHz in sixths of an octave about each seat's own mean. */
export function seatLevels(
  hz: Float64Array,
  transfers: SeatTransfers,
  lowHz: number,
  highHz: number,
): SeatLevels {
  const first = hz.findIndex((f) => f >= lowHz);
  const end = hz.findLastIndex((f) => f <= highHz) + 1;
  const seats = transfers.map(({ re, im }) => {
    const power = re.map((a, k) => a * a + (im[k] ?? 0) ** 2);
    const db = smoothOnGrid(hz, power, smoothing).slice(first, end).map(powerToDb);
    const mean = db.reduce((sum, value) => sum + value, 0) / db.length;
    return db.map((value) => value - mean);
  });
  return { hz: hz.slice(first, end), seats };
}

/**
 * Up to `count` peaking sections that bring the levels of all seats nearest to flat, one after
 * another: cuts first; boosts only where all seats are down alike, and none for a single seat, of
 * which nobody knows whether it moves. Own method.
 */
export function equaliseSeats(levels: SeatLevels, count: number): EqualiserBand[] {
  const bands: EqualiserBand[] = [];
  let now = levels;
  for (const gains of [cutsDb, boostsDb]) {
    while (bands.length < count) {
      const band = bestBand(now, gains);
      if (!band) break;
      bands.push(band);
      now = afterBands(now, [band]);
    }
  }
  return bands;
}

/** The levels through sections, each seat about its own mean again. */
export function afterBands({ hz, seats }: SeatLevels, bands: readonly EqualiserBand[]): SeatLevels {
  const sections = bands.map(({ hz: at, q, gainDb }) =>
    equaliserSection({ kind: 'peak', hz: at, q, gainDb }, sampleRate),
  );
  const gain = hz.map((f) => 20 * Math.log10(magnitude(sectionsResponse(sections, f, sampleRate))));
  return {
    hz,
    seats: seats.map((db) => {
      const moved = db.map((value, k) => value + (gain[k] ?? 0));
      const mean = moved.reduce((sum, value) => sum + value, 0) / moved.length;
      return moved.map((value) => value - mean);
    }),
  };
}

/** Rms of a seat's levels, dB. */
export function deviationOf(db: Float64Array): number {
  return Math.sqrt(db.reduce((sum, value) => sum + value * value, 0) / db.length);
}

function bestBand(levels: SeatLevels, gains: readonly number[]): EqualiserBand | null {
  const { hz } = levels;
  let best: EqualiserBand | null = null;
  let least = totalOf(levels) - leastGainDb;
  for (let k = 0; k < hz.length; k += stride) {
    const here = levels.seats.map((db) => db[k] ?? 0);
    for (const q of qs) {
      for (const gainDb of gains) {
        if (!isAllowed(here, gainDb)) continue;
        const band = { hz: Number((hz[k] ?? 0).toFixed(1)), q, gainDb };
        const total = totalOf(afterBands(levels, [band]));
        if (total < least) {
          least = total;
          best = band;
        }
      }
    }
  }
  return best;
}

function isAllowed(here: readonly number[], gainDb: number): boolean {
  const [low, high] = [Math.min(...here), Math.max(...here)];
  if (gainDb < 0) return low > -nullDb && high > downDb;
  return here.length > 1 && high <= -downDb && high - low <= alikeDb;
}

/** Rms over seats of their deviations. */
function totalOf({ seats }: SeatLevels): number {
  return Math.sqrt(seats.reduce((sum, db) => sum + deviationOf(db) ** 2, 0) / seats.length);
}
