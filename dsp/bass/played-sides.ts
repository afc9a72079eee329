import type { FilterSpec } from '../filter/analogue';
import { scanDelays, type DelayAndPolarity, type DelayScan, type ScannedMain } from './delay-scan';
import { throughPath } from './electrical-path';
import { crossoverBand } from './log-band';
import { checkSeats, findDip, sumPowers, type Dip } from './predict-sum';
import type { SeatTransfers } from './transfer';

/** A main without its high-pass at every seat. */
export interface MainAtSeats {
  readonly seats: SeatTransfers;
  /** Share in the average over mains, default 1. */
  readonly weight?: number;
}

/** A crossover and the seats it is judged at. */
export interface CrossoverTerms {
  /** The grid of all responses, at least an octave to either side of the crossover. */
  readonly hz: Float64Array;
  readonly crossoverHz: number;
  /** Filters of the mains and of the sub, in series; none where the processor puts none. */
  readonly highPass: readonly FilterSpec[];
  readonly lowPass: readonly FilterSpec[];
  /** One per seat, above 0; default equal. */
  readonly seatWeights?: readonly number[];
}

/** Mains and sub through their filters. */
export interface PlayedSides {
  readonly hz: Float64Array;
  readonly crossoverHz: number;
  readonly mains: readonly ScannedMain[];
  readonly sub: SeatTransfers;
  readonly seatWeights: readonly number[];
}

/** Loss and dip of one setting. */
export interface SumFigures {
  /** Energy lost, mean over seats and mains, dB, 0 or more. */
  readonly lossDb: number;
  /** Mean over mains, dB. */
  readonly seatLossDb: readonly number[];
  readonly dip: Dip;
}

/** Throws RangeError for no mains, seats or weights that differ in number, or other grids. */
export function playSides(
  mains: readonly MainAtSeats[],
  sub: SeatTransfers,
  { hz, crossoverHz, highPass, lowPass, seatWeights = sub.map(() => 1) }: CrossoverTerms,
): PlayedSides {
  if (mains.length === 0) throw new RangeError('mains must hold at least one, got none');
  for (const { seats } of mains) checkSeats(seats, sub, hz);
  if (seatWeights.length !== sub.length) {
    throw new RangeError(`seatWeights must be ${sub.length}, got ${seatWeights.length}`);
  }
  return {
    hz,
    crossoverHz,
    mains: mains.map(({ seats, weight = 1 }) => ({
      seats: throughPath(seats, { filters: highPass }, hz),
      weight,
    })),
    sub: throughPath(sub, { filters: lowPass }, hz),
    seatWeights,
  };
}

/** The losses of all delays; see scanDelays. */
export function scanSides({ hz, crossoverHz, mains, sub, seatWeights }: PlayedSides): DelayScan {
  return scanDelays(hz, crossoverHz, mains, sub, seatWeights);
}

/** The same without one of the seats. */
export function leaveSeatOut(played: PlayedSides, seat: number): PlayedSides {
  const others = <T>(all: readonly T[]): T[] => all.filter((_, index) => index !== seat);
  return {
    ...played,
    mains: played.mains.map((main) => ({ ...main, seats: others(main.seats) })),
    sub: others(played.sub),
    seatWeights: others(played.seatWeights),
  };
}

/** What one delay and polarity give. */
export function figuresAt(
  { hz, crossoverHz, mains, sub }: PlayedSides,
  scan: DelayScan,
  at: DelayAndPolarity,
): SumFigures {
  const { delaySeconds, inverted } = at;
  const moved = throughPath(sub, { filters: [], delaySeconds, inverted }, hz);
  const powers = mains.flatMap(({ seats }) =>
    seats.flatMap((main, seat) => {
      const low = moved[seat];
      return low ? [sumPowers(main, low)] : [];
    }),
  );
  return {
    lossDb: scan.lossDb(at),
    seatLossDb: scan.seatLossDb(at),
    dip: findDip(hz, powers, crossoverBand(hz, crossoverHz)),
  };
}
