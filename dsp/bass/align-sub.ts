import type { FilterSpec } from '../filter/analogue';
import { delayCandidates, type AlignedDelay } from './delay-candidates';
import { delayCentre } from './delay-centre';
import { seatInterval, tolerance } from './delay-interval';
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

export interface AlignmentOptions {
  /** The grid of all responses, at least an octave to either side of the crossover. */
  readonly hz: Float64Array;
  readonly crossoverHz: number;
  /** Filters of the mains and of the sub, in series; none where the processor puts none. */
  readonly highPass: readonly FilterSpec[];
  readonly lowPass: readonly FilterSpec[];
  /** One per seat, above 0; default equal. */
  readonly seatWeights?: readonly number[];
  /** What is set now; default no delay, not inverted. */
  readonly wired?: DelayAndPolarity;
  /** Whether the processor can turn the sub over; default true. */
  readonly canInvert?: boolean;
  /** Signal over noise about the crossover at the noisiest seat, dB; left out where not known. */
  readonly noiseMarginDb?: number;
}

/** Loss and dip of one setting. */
export interface SumFigures {
  /** Energy lost, mean over seats and mains, dB, 0 or more. */
  readonly lossDb: number;
  /** Mean over mains, dB. */
  readonly seatLossDb: readonly number[];
  readonly dip: Dip;
}

/** A sub set against its mains. A polarity found here says nothing of how the sub is wired. */
export interface SubAlignment extends DelayAndPolarity, SumFigures {
  readonly kind: 'told';
  /** True where nothing better than what is set now was found. */
  readonly unchanged: boolean;
  readonly wired: SumFigures;
  /** Other delays and polarities within 0.4 dB, least loss first. */
  readonly alternatives: readonly AlignedDelay[];
  /** Delays that cost at most 0.1 dB more. */
  readonly toleranceSeconds: readonly [number, number];
  /** 90 % interval from how the seats differ; null for fewer than three. */
  readonly interval: readonly [number, number] | null;
  /** Delay at which the sub sets in with the mains. */
  readonly centreSeconds: number;
  /** 'another delay': one seat less and another is chosen. More seats would settle either. */
  readonly doubt: 'few seats' | 'another delay' | null;
}

/** Why no delay can be told, and the one thing that would settle it. */
export interface NoAlignment {
  readonly kind: 'cannot tell';
  readonly why: 'noise' | 'no overlap';
  /** 'no overlap': which side is too quiet about the crossover to matter. */
  readonly quieter: 'mains' | 'sub' | null;
  readonly action: 'measure louder' | 'set levels first';
}

/** Below this the phase is not known to half a radian. */
const leastMarginDb = 10;
/** Farther apart than this no delay changes the sum by more than 1.5 dB. */
const widestGapDb = 20;
const alikeDb = 0.4;
const fewestSeats = 3;

/**
 * Delay and polarity of a sub against a main, or several with weights, at all seats: of the local
 * minima of the energy lost about the crossover (scanDelays) within a period of where the sub sets
 * in with the mains, the one that loses least, with 1 dB against it for a period of distance,
 * growing with the square. Polarity and half a period are nearly the same thing in half an octave,
 * so the distance decides between them. Never worse than what is set now. Throws RangeError for no
 * mains, seats that differ in number, other grids, or silence. Own method; accuracy: tests/accuracy.
 */
export function alignSub(
  mains: readonly MainAtSeats[],
  sub: SeatTransfers,
  options: AlignmentOptions,
): SubAlignment | NoAlignment {
  const { noiseMarginDb = Infinity, wired = { delaySeconds: 0, inverted: false } } = options;
  const played = playThrough(mains, sub, options);
  const scan = scanOf(played, options);
  if (noiseMarginDb < leastMarginDb) {
    return { kind: 'cannot tell', why: 'noise', quieter: null, action: 'measure louder' };
  }
  const centre = centreOf(played, options);
  if (centre === null || Math.abs(scan.mainOverSubDb) > widestGapDb) {
    const quieter = scan.mainOverSubDb < 0 ? 'mains' : 'sub';
    return { kind: 'cannot tell', why: 'no overlap', quieter, action: 'set levels first' };
  }
  const periodSeconds = 1 / options.crossoverHz;
  const choose = (one: DelayScan): readonly AlignedDelay[] =>
    delayCandidates(one, {
      centreSeconds: centre,
      periodSeconds,
      canInvert: options.canInvert ?? true,
    });
  const candidates = choose(scan);
  const best = candidates[0] ?? { ...wired, lossDb: Infinity };
  const asWired = { ...wired, lossDb: scan.lossDb(wired) };
  const unchanged = asWired.lossDb <= best.lossDb;
  const chosen = unchanged ? asWired : best;
  const without = sub.length < 2 ? [] : sub.map((_, seat) => scanOf(leaveOut(played, seat), options));
  const isSame = (other: AlignedDelay | undefined, than: AlignedDelay): boolean =>
    other?.inverted === than.inverted &&
    Math.abs(other.delaySeconds - than.delaySeconds) < periodSeconds / 4;
  const firm = without.every((one) => isSame(choose(one)[0], best));
  return {
    kind: 'told',
    delaySeconds: chosen.delaySeconds,
    inverted: chosen.inverted,
    ...figuresOf(played, scan, chosen, options),
    unchanged,
    wired: figuresOf(played, scan, wired, options),
    alternatives: candidates
      .filter((one) => one.lossDb <= chosen.lossDb + alikeDb && !isSame(one, chosen))
      .sort((a, b) => a.lossDb - b.lossDb),
    toleranceSeconds: tolerance(scan, chosen, periodSeconds),
    interval: seatInterval(without, chosen, periodSeconds),
    centreSeconds: centre,
    doubt: sub.length < fewestSeats ? 'few seats' : firm ? null : 'another delay',
  };
}

/** Loss of any delay and polarity for the same mains, sub and options; see scanDelays. */
export function scanAlignment(
  mains: readonly MainAtSeats[],
  sub: SeatTransfers,
  options: AlignmentOptions,
): DelayScan {
  return scanOf(playThrough(mains, sub, options), options);
}

/** Everything through its filters. */
interface Played {
  readonly mains: readonly ScannedMain[];
  readonly sub: SeatTransfers;
  readonly seatWeights: readonly number[];
}

function playThrough(
  mains: readonly MainAtSeats[],
  sub: SeatTransfers,
  { hz, highPass, lowPass, seatWeights = sub.map(() => 1) }: AlignmentOptions,
): Played {
  if (mains.length === 0) throw new RangeError('mains must hold at least one, got none');
  for (const { seats } of mains) checkSeats(seats, sub, hz);
  if (seatWeights.length !== sub.length) {
    throw new RangeError(`seatWeights must be ${sub.length}, got ${seatWeights.length}`);
  }
  return {
    mains: mains.map(({ seats, weight = 1 }) => ({
      seats: throughPath(seats, { filters: highPass }, hz),
      weight,
    })),
    sub: throughPath(sub, { filters: lowPass }, hz),
    seatWeights,
  };
}

function scanOf({ mains, sub, seatWeights }: Played, { hz, crossoverHz }: AlignmentOptions): DelayScan {
  return scanDelays(hz, crossoverHz, mains, sub, seatWeights);
}

function centreOf({ mains, sub }: Played, { hz, crossoverHz }: AlignmentOptions): number | null {
  return delayCentre(hz, crossoverHz, mains, sub);
}

function leaveOut({ mains, sub, seatWeights }: Played, seat: number): Played {
  const others = <T>(all: readonly T[]): T[] => all.filter((_, index) => index !== seat);
  return {
    mains: mains.map((main) => ({ ...main, seats: others(main.seats) })),
    sub: others(sub),
    seatWeights: others(seatWeights),
  };
}

function figuresOf(
  { mains, sub }: Played,
  scan: DelayScan,
  at: DelayAndPolarity,
  { hz, crossoverHz }: AlignmentOptions,
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
