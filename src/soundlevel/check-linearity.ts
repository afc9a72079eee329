import { powerToDb } from '../../dsp/level/decibels';

const stepDb = 6;
const toleranceDb = 0.3;
/** The quieter level must stand so far over the noise floor, which may change meanwhile. */
const leastMarginDb = 10;

/** Power of the test signal in the deciding band at two gains 6 dB apart, the noise taken out, and
 * that of the noise; mean squares. */
export interface TwoLevels {
  readonly louder: number;
  readonly quieter: number;
  readonly floor: number;
  /** Bins of the band times periods averaged. */
  readonly count: number;
}

/**
 * Whether two levels 6 dB apart differ by 6 ± 0.3 dB; null when the margin is too thin to tell: below 10 dB, or when noise alone may move the step by
 * 0.3 dB (two standard deviations).
 */
export function checkLinearity(
  levels: TwoLevels,
): { readonly stepDb: number; readonly passes: boolean } | null {
  const { louder, quieter, floor, count } = levels;
  if (!(louder > 0 && quieter > 0)) return null;
  const loudRatio = floor / louder;
  const quietRatio = floor / quieter;
  if (powerToDb(1 / loudRatio) - stepDb < leastMarginDb) return null;
  const spreadDb = Math.hypot(levelSpreadDb(loudRatio, count), levelSpreadDb(quietRatio, count));
  if (2 * spreadDb > toleranceDb) return null;
  const step = powerToDb(louder / quieter);
  return { stepDb: step, passes: Math.abs(step - stepDb) <= toleranceDb };
}

/**
 * Standard deviation in dB of the level of a steady signal read from `count` bins, with noise of
 * `noiseRatio` its power: the relative variance of the power is (2·N/S + 2·(N/S)²)/count.
 */
export function levelSpreadDb(noiseRatio: number, count: number): number {
  return (10 / Math.LN10) * Math.sqrt((2 * noiseRatio + 2 * noiseRatio * noiseRatio) / count);
}
