import { lowestNear, type AlignedDelay } from './delay-candidates';
import type { DelayScan } from './delay-scan';

/** What a delay may be off by at this cost is let pass, dB. */
const tolerableDb = 0.1;
const stepsPerPeriod = 100;
/** 5 and 95 % of the normal distribution. */
const ninetyPercent = 1.645;
/** Fewer seats than this say nothing of how they differ. */
const fewestSeats = 3;

/** Delays round a chosen one that cost at most 0.1 dB more, as far as half a period to either side. */
export function tolerance(
  scan: DelayScan,
  { delaySeconds, inverted, lossDb }: AlignedDelay,
  periodSeconds: number,
): readonly [number, number] {
  const step = periodSeconds / stepsPerPeriod;
  const walk = (side: 1 | -1): number => {
    let n = 0;
    while (
      n < stepsPerPeriod / 2 &&
      scan.lossDb({ delaySeconds: delaySeconds + side * (n + 1) * step, inverted }) <=
        lossDb + tolerableDb
    ) {
      n++;
    }
    return delaySeconds + side * n * step;
  };
  return [walk(-1), walk(1)];
}

/**
 * 90 % interval of the delay that would be best at all seats of the area these were taken from, by
 * leaving out one seat at a time: the standard error is √((n−1)/n Σ(τ_i − mean)²). Null for fewer
 * than three seats. `without` holds a scan for each seat left out. Quenouille 1956, Tukey 1958,
 * from memory.
 */
export function seatInterval(
  without: readonly DelayScan[],
  { delaySeconds, inverted }: AlignedDelay,
  periodSeconds: number,
): readonly [number, number] | null {
  const n = without.length;
  if (n < fewestSeats) return null;
  const delays = without.map(
    (scan) => lowestNear(scan, delaySeconds, periodSeconds / 4, inverted).delaySeconds,
  );
  const mean = delays.reduce((sum, delay) => sum + delay, 0) / n;
  const squares = delays.reduce((sum, delay) => sum + (delay - mean) ** 2, 0);
  const half = ninetyPercent * Math.sqrt(((n - 1) / n) * squares);
  return [delaySeconds - half, delaySeconds + half];
}
