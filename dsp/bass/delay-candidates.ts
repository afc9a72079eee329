import type { DelayAndPolarity, DelayScan } from './delay-scan';

/** A delay and polarity that lose less than their neighbours do. */
export interface AlignedDelay extends DelayAndPolarity {
  /** Mean over seats, dB, 0 or more. */
  readonly lossDb: number;
}

export interface DelayWindow {
  /** Where the sub sets in with the mains. */
  readonly centreSeconds: number;
  /** One period of the crossover; looked at as far to either side. */
  readonly periodSeconds: number;
  /** Whether the sub may be turned over. */
  readonly canInvert: boolean;
}

const stepSeconds = 0.00025;
/** A delay a whole period from the centre must save so much to be taken, dB; grows with the square. */
const pullDb = 1;

/** Local minima of the loss within a period of the centre, the first the one to take. */
export function delayCandidates(scan: DelayScan, window: DelayWindow): readonly AlignedDelay[] {
  const { centreSeconds, periodSeconds, canInvert } = window;
  const count = Math.max(2, Math.ceil(periodSeconds / stepSeconds));
  const step = periodSeconds / count;
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
    lossDb + pullDb * ((delaySeconds - centreSeconds) / periodSeconds) ** 2;
  return found.sort((a, b) => cost(a) - cost(b));
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
