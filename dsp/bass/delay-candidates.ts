import type { DelayAndPolarity, DelayScan } from './delay-scan';

/** A delay and polarity that lose less than their neighbours do. */
export interface AlignedDelay extends DelayAndPolarity {
  /** Mean over seats, dB, 0 or more. */
  readonly lossDb: number;
}

export interface DelayWindow {
  /** Where the direct sounds line up. */
  readonly centreSeconds: number;
  /** One period of the crossover. */
  readonly periodSeconds: number;
  /** Whether the sub may be turned over. */
  readonly canInvert: boolean;
}

const stepSeconds = 0.00025;
/** Delays are looked at as far from the centre, periods. */
const reach = 1.25;
/** The centre is not known better than this, periods: nearer delays are all as good. */
const freePeriods = 0.4;
/** What a delay a period farther must save to be taken, dB; grows with the square. */
const pullDb = 2;

/**
 * Local minima of the loss within 1.25 periods of the centre, the first the one to take: of least
 * loss + 2 dB · max(0, |τ − centre|·fx − 0.4)². Constants learnt in tuning rooms of tests/accuracy.
 */
export function delayCandidates(scan: DelayScan, window: DelayWindow): readonly AlignedDelay[] {
  const { centreSeconds, periodSeconds, canInvert } = window;
  const count = Math.max(8, Math.ceil((reach * periodSeconds) / stepSeconds));
  const step = (reach * periodSeconds) / count;
  const found = (canInvert ? [false, true] : [false]).flatMap((inverted) => {
    const losses = Array.from({ length: 2 * count + 1 }, (_, n) =>
      scan.lossDb({ delaySeconds: centreSeconds + (n - count) * step, inverted }),
    );
    return losses.flatMap((loss, n) => {
      const [before, after] = [losses[n - 1] ?? Infinity, losses[n + 1] ?? Infinity];
      if (loss > before || loss >= after) return [];
      return [lowestNear(scan, centreSeconds + (n - count) * step, step, inverted)];
    });
  });
  const cost = ({ lossDb, delaySeconds }: AlignedDelay): number =>
    lossDb + distanceCostDb(delaySeconds, centreSeconds, periodSeconds);
  return found.sort((a, b) => cost(a) - cost(b));
}

/** What a delay must save to be taken as far from where the direct sounds line up, dB, 0 or more. */
export function distanceCostDb(
  delaySeconds: number,
  centreSeconds: number,
  periodSeconds: number,
): number {
  const periods = Math.abs(delaySeconds - centreSeconds) / periodSeconds;
  return pullDb * Math.max(0, periods - freePeriods) ** 2;
}

/** The lowest loss within `reach` of a delay, by golden section to a thousandth of it. */
export function lowestNear(
  scan: DelayScan,
  delaySeconds: number,
  reach: number,
  inverted: boolean,
): AlignedDelay {
  const loss = (at: number): number => scan.lossDb({ delaySeconds: at, inverted });
  const golden = (Math.sqrt(5) - 1) / 2;
  let low = delaySeconds - reach;
  let high = delaySeconds + reach;
  let left = high - golden * (high - low);
  let right = low + golden * (high - low);
  let [atLeft, atRight] = [loss(left), loss(right)];
  while (high - low > reach / 1000) {
    if (atLeft <= atRight) {
      [high, right, atRight] = [right, left, atLeft];
      left = high - golden * (high - low);
      atLeft = loss(left);
    } else {
      [low, left, atLeft] = [left, right, atRight];
      right = low + golden * (high - low);
      atRight = loss(right);
    }
  }
  const best = (low + high) / 2;
  const [lossDb, own] = [loss(best), loss(delaySeconds)];
  return own < lossDb
    ? { delaySeconds, inverted, lossDb: own }
    : { delaySeconds: best, inverted, lossDb };
}
