import { blockLength, blockPeaks, staysBelow, type BlockPeaks } from './block-peaks';
import { checkBounds } from './clipping';
import type { Samples } from '../signal/samples';

/** Samples at the ceiling that make a heap, and how many times those in the stretch below it. */
const leastHeap = 40;
const heapRatio = 5;
/** The noise blurs a ceiling over so many of its rms; less than this share of it is no noise. */
const blurRms = 9;
const leastBlur = 0.002;
/** A blur wider than this share of the ceiling hides it. */
const widestBlur = 0.05;

/**
 * Ceiling at which samples[from … to) were cut off before noise of `noiseRms` came on top, so that
 * no flat tops are left: far more samples lie within the noise below the largest value than in the
 * next stretch of that width (a sine of constant level has 2.4 times as many, a sweep in a room
 * fewer). `peaks` of the stretch where they are known. Null when there is none or the noise would
 * hide it. Throws RangeError for bounds outside the samples. Common practice.
 */
export function findBlurredCeiling(
  samples: Samples,
  from: number,
  to: number,
  noiseRms: number,
  peaks?: BlockPeaks,
): number | null {
  checkBounds(samples, from, to);
  const known = peaks ?? blockPeaks(samples, from, to);
  const ceilings = [1, -1].flatMap(
    (sign) => ceilingOf(samples, from, to, sign, noiseRms, known) ?? [],
  );
  return ceilings.length === 0 ? null : Math.max(...ceilings);
}

function ceilingOf(
  samples: Samples,
  from: number,
  to: number,
  sign: number,
  noiseRms: number,
  peaks: BlockPeaks,
): number | null {
  const top = sign > 0 ? peaks.highest : -peaks.lowest;
  const width = Math.max(blurRms * noiseRms, leastBlur * top);
  if (!(top > 0 && width <= widestBlur * top)) return null;
  let heap = 0;
  let below = 0;
  const deepest = 2 * width;
  for (let n = from; n < to; n++) {
    const into = (n - from) % blockLength;
    if (into === 0 && staysBelow(peaks, (n - from) / blockLength, sign, top - deepest)) {
      n += blockLength - 1;
      continue;
    }
    const depth = top - sign * (samples[n] ?? 0);
    if (depth > deepest) continue;
    if (depth <= width) heap++;
    else below++;
  }
  return heap >= leastHeap && heap > heapRatio * below ? top - width / 2 : null;
}
