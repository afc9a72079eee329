import { powerToDb } from '../../dsp/level/decibels';

const stepDb = 6;
const toleranceDb = 0.3;
/** The quieter level must stand so far over the noise floor, which may change meanwhile. */
const leastMarginDb = 10;

/** Power in the deciding band at two gains 6 dB apart and in silence; mean squares. */
export interface TwoLevels {
  readonly louder: number;
  readonly quieter: number;
  readonly floor: number;
  /** Bins of the band times periods averaged. */
  readonly count: number;
}

/**
 * Whether two levels 6 dB apart differ by 6 ± 0.3 dB once the noise floor's share is taken out;
 * null when the margin is too thin to tell: below 10 dB, or when noise alone may move the step by
 * 0.3 dB (two standard deviations). Powers of a steady signal S in noise N over K bins have the
 * relative variance (2·N/S + 2·(N/S)²)/K.
 */
export function checkLinearity(
  levels: TwoLevels,
): { readonly stepDb: number; readonly passes: boolean } | null {
  const { floor, count } = levels;
  const louder = levels.louder - floor;
  const quieter = levels.quieter - floor;
  if (!(louder > 0 && quieter > 0)) return null;
  const loudRatio = floor / louder;
  const quietRatio = floor / quieter;
  if (powerToDb(1 / loudRatio) - stepDb < leastMarginDb) return null;
  const variance = (relativeVariance(loudRatio) + relativeVariance(quietRatio)) / count;
  const spreadDb = (10 / Math.LN10) * Math.sqrt(variance);
  if (2 * spreadDb > toleranceDb) return null;
  const step = powerToDb(louder / quieter);
  return { stepDb: step, passes: Math.abs(step - stepDb) <= toleranceDb };
}

function relativeVariance(ratio: number): number {
  return 2 * ratio + 2 * ratio * ratio;
}
