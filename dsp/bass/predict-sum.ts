import { powerToDb } from '../level/decibels';
import { throughPath, type ElectricalPath } from './electrical-path';
import { crossoverBand, smoothOnGrid, type LogBand } from './log-band';
import type { SeatTransfers, Transfer } from './transfer';

export interface SumSettings {
  /** The grid of all responses. */
  readonly hz: Float64Array;
  readonly crossoverHz: number;
  readonly main: ElectricalPath;
  readonly sub: ElectricalPath;
}

/** Where the sum falls deepest below what both sides together could give. */
export interface Dip {
  /** 1/6-octave level of the sum re |main| + |sub|; 0 or below. */
  readonly db: number;
  readonly hz: number;
}

/** A main and a sub together at one seat; curves over the grid, dB re the transfers' 1. */
export interface SeatSum {
  readonly sumDb: Float64Array;
  readonly mainDb: Float64Array;
  readonly subDb: Float64Array;
  readonly lostDb: number;
  readonly dip: Dip;
}

export interface PredictedSum {
  readonly seats: readonly SeatSum[];
  /** Mean over seats. */
  readonly lostDb: number;
  /** Of the power averaged over seats. */
  readonly dip: Dip;
}

const dipFraction = 6;

/**
 * Complex sum of a main and a sub at every seat, M·P_m + S·P_s with P the electrical paths. Lost is
 * the pink-weighted energy of |M| + |S| over that of the sum from fx/√2 to √2 fx, dB, 0 or more;
 * the dip is sought in the same band. Sub low-pass and anything beside the crossover belong into
 * the paths. Throws RangeError for no seats, seats that differ in number, or other grids.
 */
export function predictSum(
  main: SeatTransfers,
  sub: SeatTransfers,
  { hz, crossoverHz, main: mainPath, sub: subPath }: SumSettings,
): PredictedSum {
  checkSeats(main, sub, hz);
  const band = crossoverBand(hz, crossoverHz);
  const played = throughPath(main, mainPath, hz);
  const low = throughPath(sub, subPath, hz);
  const powers = played.map((one, seat) => sumPowers(one, low[seat] ?? one));
  const seats = powers.map((power, seat): SeatSum => {
    const [one, other] = [played[seat], low[seat]];
    return {
      sumDb: power.sum.map(powerToDb),
      mainDb: one ? levels(one) : new Float64Array(0),
      subDb: other ? levels(other) : new Float64Array(0),
      lostDb: lostEnergyDb(power, band),
      dip: findDip(hz, [power], band),
    };
  });
  return {
    seats,
    lostDb: seats.reduce((sum, seat) => sum + seat.lostDb, 0) / seats.length,
    dip: findDip(hz, powers, band),
  };
}

/** Powers of a sum and of what it would be were both in phase. */
export interface SumPowers {
  readonly sum: Float64Array;
  readonly most: Float64Array;
}

/** |M + S|² and (|M| + |S|)². */
export function sumPowers(main: Transfer, sub: Transfer): SumPowers {
  const sum = new Float64Array(main.re.length);
  const most = new Float64Array(main.re.length);
  for (let k = 0; k < sum.length; k++) {
    const [a, b] = [main.re[k] ?? 0, main.im[k] ?? 0];
    const [c, d] = [sub.re[k] ?? 0, sub.im[k] ?? 0];
    sum[k] = (a + c) ** 2 + (b + d) ** 2;
    most[k] = (Math.hypot(a, b) + Math.hypot(c, d)) ** 2;
  }
  return { sum, most };
}

/** Deepest place of the powers added over seats; 0 dB at the band's start where all is silent. */
export function findDip(
  hz: Float64Array,
  powers: readonly SumPowers[],
  { first, end }: LogBand,
): Dip {
  const total = (key: keyof SumPowers): Float64Array =>
    smoothOnGrid(
      hz,
      hz.map((_, k) => powers.reduce((sum, power) => sum + (power[key][k] ?? 0), 0)),
      dipFraction,
    );
  const [sum, most] = [total('sum'), total('most')];
  let dip = { db: 0, hz: hz[first] ?? 0 };
  for (let k = first; k < end; k++) {
    const [is, could] = [sum[k] ?? 0, most[k] ?? 0];
    if (!(could > 0)) continue;
    const db = Math.min(0, powerToDb(Math.max(is, 0) / could));
    if (db < dip.db) dip = { db, hz: hz[k] ?? 0 };
  }
  return dip;
}

/** Throws RangeError unless both are at the same seats, one or more, on the grid. */
export function checkSeats(main: SeatTransfers, sub: SeatTransfers, hz: Float64Array): void {
  if (main.length === 0 || main.length !== sub.length) {
    throw new RangeError(`seats must be the same, got ${main.length} and ${sub.length}`);
  }
  for (const { re, im } of [...main, ...sub]) {
    if (re.length !== hz.length || im.length !== hz.length) {
      throw new RangeError(`responses must hold ${hz.length} frequencies, got ${re.length}`);
    }
    if (!re.every(Number.isFinite) || !im.every(Number.isFinite)) {
      throw new RangeError('responses must be finite');
    }
  }
}

function lostEnergyDb({ sum, most }: SumPowers, { first, weights }: LogBand): number {
  let [is, could] = [0, 0];
  for (const [k, weight] of weights.entries()) {
    is += weight * (sum[first + k] ?? 0);
    could += weight * (most[first + k] ?? 0);
  }
  return could > 0 ? Math.max(0, -powerToDb(is / could)) : 0;
}

function levels({ re, im }: Transfer): Float64Array {
  return re.map((a, k) => powerToDb(a * a + (im[k] ?? 0) ** 2));
}
