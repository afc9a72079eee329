import type { Samples } from '../signal/samples';

/** Samples of a block. */
export const blockLength = 64;
/** Neighbours that differ by no more are equal. */
const sameWithin = 1e-9;

/** Largest and smallest sample of a stretch and of each of its blocks; 0 lies between them. */
export interface BlockPeaks {
  /**
   * Smallest difference between unequal neighbours: the converter's step, or less; 0 for a constant.
   */
  readonly step: number;
  readonly highs: Float64Array;
  readonly lows: Float64Array;
  readonly highest: number;
  readonly lowest: number;
}

/** One pass over samples[from … to), so that what looks for peaks can pass most of them by. */
export function blockPeaks(samples: Samples, from: number, to: number): BlockPeaks {
  const count = Math.ceil((to - from) / blockLength);
  const highs = new Float64Array(count);
  const lows = new Float64Array(count);
  let highest = 0;
  let lowest = 0;
  let step = Infinity;
  let before = samples[from] ?? 0;
  for (let block = 0; block < count; block++) {
    const start = from + block * blockLength;
    const end = Math.min(start + blockLength, to);
    let high = 0;
    let low = 0;
    for (let n = start; n < end; n++) {
      const value = samples[n] ?? 0;
      if (value > high) high = value;
      if (value < low) low = value;
      const difference = Math.abs(value - before);
      if (difference < step && difference > sameWithin) step = difference;
      before = value;
    }
    highs[block] = high;
    lows[block] = low;
    if (high > highest) highest = high;
    if (low < lowest) lowest = low;
  }
  return { highs, lows, highest, lowest, step: step < Infinity ? step : 0 };
}

/** Whether no sample of the block of a stretch, times the sign, reaches `least`. */
export function staysBelow(peaks: BlockPeaks, block: number, sign: number, least: number): boolean {
  return (sign > 0 ? (peaks.highs[block] ?? 0) : -(peaks.lows[block] ?? 0)) < least;
}
