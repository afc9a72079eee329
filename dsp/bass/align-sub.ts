import { delayCandidates, distanceCostDb, type AlignedDelay } from './delay-candidates';
import { delayCentre } from './delay-centre';
import { seatInterval, tolerance } from './delay-interval';
import type { DelayAndPolarity, DelayScan } from './delay-scan';
import {
  figuresAt,
  leaveSeatOut,
  playSides,
  scanSides,
  type CrossoverTerms,
  type MainAtSeats,
  type SumFigures,
} from './played-sides';
import type { SeatTransfers } from './transfer';

export interface AlignmentOptions extends CrossoverTerms {
  /** What is set now; default no delay, not inverted. */
  readonly wired?: DelayAndPolarity;
  /** Delay of the sub at which the arrivals line up that were read; left out where not known. */
  readonly arrivalDelaySeconds?: number;
  /** Whether the processor can turn the sub over; default true. */
  readonly canInvert?: boolean;
  /** Signal over noise about the crossover at the noisiest seat, dB; left out where not known. */
  readonly noiseMarginDb?: number;
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
  /** Delay at which the direct sounds line up. */
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

/** Below this the phase is not known to a third of a radian. */
const leastMarginDb = 10;
/** Farther apart than this no delay changes the sum by more than about 1 dB. */
const widestGapDb = 20;
const alikeDb = 0.4;
const fewestSeats = 3;
/** What is set now may stay as far from where the direct sounds line up, periods. */
const farthestPeriods = 1;
const notWired: DelayAndPolarity = { delaySeconds: 0, inverted: false };

/**
 * Delay and polarity of a sub against a main, or several with weights, at all seats: of the local
 * minima of the energy lost about the crossover (scanDelays) near where the direct sounds line up
 * (delayCentre), the one of least loss, distance from there counted against it (delayCandidates).
 * Polarity and half a period are nearly the same thing in an octave, so the distance decides between
 * them. What is set now stays where it is no worse by the same count, unless it lies more than a period
 * from there.
 * Throws RangeError for no mains, seats that differ in number, other grids, or silence. Own method;
 * accuracy: tests/accuracy.
 */
export function alignSub(
  mains: readonly MainAtSeats[],
  sub: SeatTransfers,
  options: AlignmentOptions,
): SubAlignment | NoAlignment {
  const { noiseMarginDb = Infinity, wired = notWired, canInvert = true } = options;
  const played = playSides(mains, sub, options);
  const scan = scanSides(played);
  if (noiseMarginDb < leastMarginDb) {
    return { kind: 'cannot tell', why: 'noise', quieter: null, action: 'measure louder' };
  }
  const centreSeconds = delayCentre(mains, sub, options, options.arrivalDelaySeconds);
  if (centreSeconds === null || !overlaps(scan)) {
    const quieter = scan.mainOverSubDb < 0 ? 'mains' : 'sub';
    return { kind: 'cannot tell', why: 'no overlap', quieter, action: 'set levels first' };
  }
  const periodSeconds = 1 / options.crossoverHz;
  const choose = (one: DelayScan): readonly AlignedDelay[] =>
    delayCandidates(one, { centreSeconds, periodSeconds, canInvert });
  const candidates = choose(scan);
  const asWired = { ...wired, lossDb: scan.lossDb(wired) };
  const [best = asWired] = candidates;
  const near = Math.abs(wired.delaySeconds - centreSeconds) <= farthestPeriods * periodSeconds;
  const cost = ({ lossDb, delaySeconds }: AlignedDelay): number =>
    lossDb + distanceCostDb(delaySeconds, centreSeconds, periodSeconds);
  const unchanged = candidates.length === 0 || (near && cost(asWired) <= cost(best));
  const chosen = unchanged ? asWired : best;
  const without = sub.length < 2 ? [] : sub.map((_, seat) => scanSides(leaveSeatOut(played, seat)));
  const isSame = (one: DelayAndPolarity, other: DelayAndPolarity): boolean =>
    one.inverted === other.inverted &&
    Math.abs(one.delaySeconds - other.delaySeconds) < periodSeconds / 4;
  const firm = without.every((one) => isSame(choose(one)[0] ?? asWired, best));
  return {
    kind: 'told',
    delaySeconds: chosen.delaySeconds,
    inverted: chosen.inverted,
    ...figuresAt(played, scan, chosen),
    unchanged,
    wired: figuresAt(played, scan, wired),
    alternatives: candidates
      .filter((one) => one.lossDb <= chosen.lossDb + alikeDb && !isSame(one, chosen))
      .toSorted((a, b) => a.lossDb - b.lossDb),
    toleranceSeconds: tolerance(scan, chosen, periodSeconds),
    interval: seatInterval(without, chosen, periodSeconds),
    centreSeconds,
    doubt: sub.length < fewestSeats ? 'few seats' : firm ? null : 'another delay',
  };
}

/** Whether mains and sub are near enough in level about the crossover for a delay to matter. */
export function overlaps(scan: DelayScan): boolean {
  return Math.abs(scan.mainOverSubDb) <= widestGapDb;
}

/** Loss of any delay and polarity for the same mains, sub and options; see scanDelays. */
export function scanAlignment(
  mains: readonly MainAtSeats[],
  sub: SeatTransfers,
  terms: CrossoverTerms,
): DelayScan {
  return scanSides(playSides(mains, sub, terms));
}
