import { powerToDb } from '../level/decibels';
import { crossoverBand } from './log-band';
import type { SeatTransfers } from './transfer';

/** A main as it sounds through its high-pass, at every seat. */
export interface ScannedMain {
  readonly seats: SeatTransfers;
  /** Share in the average over mains, above 0. */
  readonly weight: number;
}

/** A delay of the sub against the mains and its polarity. */
export interface DelayAndPolarity {
  /** The sub later when above 0, the mains later when below. */
  readonly delaySeconds: number;
  readonly inverted: boolean;
}

/** What any delay and polarity would lose; see scanDelays. */
export interface DelayScan {
  /** Mean over seats and mains in dB, 0 or more. */
  lossDb(at: DelayAndPolarity): number;
  /** The same seat by seat, mean over mains. */
  seatLossDb(at: DelayAndPolarity): number[];
  /** Pink energy of the mains over that of the sub in the band, all seats, dB. */
  readonly mainOverSubDb: number;
}

/** One main at one seat: what does not move, the most there can be, and what turns with delay. */
interface Pair {
  readonly seat: number;
  readonly weight: number;
  readonly rest: number;
  readonly most: number;
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** The least share of the possible energy that is told apart from none. */
const leastShare = 1e-12;

/**
 * Prepares the loss of energy of main + sub for any delay τ and polarity p = ±1 of the sub: the
 * power Σ w(|M|² + |S|² + 2p·Re(M* S e^(−2πifτ))) re Σ w(|M| + |S|)², w pink from fx/√2 to √2 fx,
 * so that one delay costs one sum over the band per seat. `seatWeights` default to equal. Throws
 * RangeError for silence, or weights that are not above 0.
 */
export function scanDelays(
  hz: Float64Array,
  crossoverHz: number,
  mains: readonly ScannedMain[],
  sub: SeatTransfers,
  seatWeights: readonly number[] = sub.map(() => 1),
): DelayScan {
  const { first, weights } = crossoverBand(hz, crossoverHz);
  const omega = Float64Array.from(weights, (_, k) => 2 * Math.PI * (hz[first + k] ?? 0));
  let [mainEnergy, subEnergy] = [0, 0];
  const pairs = mains.flatMap(({ seats, weight }) =>
    seats.map((main, seat): Pair => {
      const low = sub[seat] ?? main;
      const re = new Float64Array(weights.length);
      const im = new Float64Array(weights.length);
      let [mine, its, most] = [0, 0, 0];
      for (const [n, w] of weights.entries()) {
        const k = first + n;
        const [a, b] = [main.re[k] ?? 0, main.im[k] ?? 0];
        const [c, d] = [low.re[k] ?? 0, low.im[k] ?? 0];
        mine += w * (a * a + b * b);
        its += w * (c * c + d * d);
        most += w * (Math.hypot(a, b) + Math.hypot(c, d)) ** 2;
        re[n] = 2 * w * (a * c + b * d);
        im[n] = 2 * w * (a * d - b * c);
      }
      const share = weight * (seatWeights[seat] ?? 1);
      mainEnergy += (share * mine) / most;
      subEnergy += (share * its) / most;
      return { seat, weight: share, rest: mine + its, most, re, im };
    }),
  );
  for (const { weight, most } of pairs) {
    if (!(weight > 0 && weight < Infinity)) {
      throw new RangeError(`weights must be above 0, got ${weight}`);
    }
    if (!(most > 0)) throw new RangeError('main or sub must sound in the band, got silence');
  }
  const cos = new Float64Array(weights.length);
  const sin = new Float64Array(weights.length);
  const turnTo = (seconds: number): void => {
    for (let k = 0; k < omega.length; k++) {
      cos[k] = Math.cos((omega[k] ?? 0) * seconds);
      sin[k] = Math.sin((omega[k] ?? 0) * seconds);
    }
  };
  const lossOf = ({ rest, most, re, im }: Pair, inverted: boolean): number => {
    let cross = 0;
    for (let k = 0; k < re.length; k++) {
      cross += (re[k] ?? 0) * (cos[k] ?? 0) + (im[k] ?? 0) * (sin[k] ?? 0);
    }
    const share = (rest + (inverted ? -cross : cross)) / most;
    return Math.max(0, -powerToDb(Math.max(share, leastShare)));
  };
  const meanLoss = (chosen: readonly Pair[], inverted: boolean): number => {
    let [sum, total] = [0, 0];
    for (const pair of chosen) {
      sum += pair.weight * lossOf(pair, inverted);
      total += pair.weight;
    }
    return sum / total;
  };
  return {
    lossDb({ delaySeconds, inverted }) {
      turnTo(delaySeconds);
      return meanLoss(pairs, inverted);
    },
    seatLossDb({ delaySeconds, inverted }) {
      turnTo(delaySeconds);
      return sub.map((_, seat) =>
        meanLoss(
          pairs.filter((pair) => pair.seat === seat),
          inverted,
        ),
      );
    },
    mainOverSubDb: powerToDb(mainEnergy) - powerToDb(subEnergy),
  };
}
