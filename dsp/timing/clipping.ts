import { blockLength, blockPeaks, staysBelow, type BlockPeaks } from './block-peaks';
import type { Samples } from '../signal/samples';

/** Samples cut off at a constant ceiling. */
export interface Clipping {
  /** Magnitude of the ceiling, full scale 1. */
  readonly ceiling: number;
  /** Flat tops of three or more equal samples. */
  readonly plateaus: number;
  /** Samples that stand at the ceiling. */
  readonly samples: number;
  /** The first of them. */
  readonly firstSample: number;
}

/** A ceiling from here on is that of the file format. */
const fullScale = 0.9999;
const leastRun = 3;
const leastPlateaus = 3;
/** Samples at the ceiling, however short their runs, that make a heap if so many times … */
const leastHeap = 12;
/** … as many as lie in the last two percent below it. */
const heapRatio = 3;
const heapDepth = 0.02;
/** Steps of the converter a ceiling must be high for such a heap to mean something. */
const heapSteps = 200;

/**
 * Clipping in samples[from … to): flat tops of three or more equal samples at the largest or the
 * smallest value, steeper at their sides than the crest of a smooth wave in the converter's own
 * steps would be; or a heap of samples at that value. One flat top is enough at full scale, three
 * at a lower ceiling. `peaks` of the stretch where they are known. Null when there is none. Throws
 * RangeError for bounds outside the samples. Common practice.
 */
export function findClipping(
  samples: Samples,
  from: number,
  to: number,
  peaks?: BlockPeaks,
): Clipping | null {
  checkBounds(samples, from, to);
  const known = peaks ?? blockPeaks(samples, from, to);
  const { step } = known;
  if (step === 0) return null;
  const found = [1, -1].flatMap((sign) => clippedSide(samples, from, to, sign, step, known) ?? []);
  const [first, second] = found;
  if (!first) return null;
  if (!second) return first;
  return {
    ceiling: Math.max(first.ceiling, second.ceiling),
    plateaus: first.plateaus + second.plateaus,
    samples: first.samples + second.samples,
    firstSample: Math.min(first.firstSample, second.firstSample),
  };
}

function clippedSide(
  samples: Samples,
  from: number,
  to: number,
  sign: number,
  step: number,
  peaks: BlockPeaks,
): Clipping | null {
  const top = sign > 0 ? peaks.highest : -peaks.lowest;
  if (!(top > 0)) return null;
  const ceiling = top - step / 4;
  const isTop = (n: number): boolean => sign * (samples[n] ?? 0) >= ceiling;
  const heapFrom = top * (1 - heapDepth);
  const least = Math.min(ceiling, heapFrom);
  let count = 0;
  let below = 0;
  let plateaus = 0;
  let first = -1;
  for (let n = from; n < to; n++) {
    // Nearly all samples are lower than anything that counts.
    const into = (n - from) % blockLength;
    if (into === 0 && staysBelow(peaks, (n - from) / blockLength, sign, least)) {
      n += blockLength - 1;
      continue;
    }
    const value = sign * (samples[n] ?? 0);
    if (value < least) continue;
    if (value < ceiling) {
      if (value > heapFrom) below++;
      continue;
    }
    const start = n;
    while (n + 1 < to && isTop(n + 1)) n++;
    const run = n - start + 1;
    count += run;
    if (first < 0) first = start;
    const open = start > from && n + 1 < to;
    if (!open || run < leastRun) continue;
    const left = top - sign * (samples[start - 1] ?? 0);
    const right = top - sign * (samples[n + 1] ?? 0);
    if (Math.max(left, right) > steepest(run, step)) plateaus++;
  }
  const heap = count >= leastHeap && count > heapRatio * below && top > heapSteps * step;
  const enough = top >= fullScale ? 1 : leastPlateaus;
  if (plateaus < enough && !heap) return null;
  return { ceiling: top, plateaus, samples: count, firstSample: first };
}

/** Largest drop beside `run` equal samples that a parabola rounded to steps can have. */
function steepest(run: number, step: number): number {
  const half = (run - 1) / 2;
  return step * (((half + 1.5) / half) ** 2 + 1);
}

/** Throws RangeError unless 0 ≤ from ≤ to ≤ length, all whole. */
export function checkBounds(samples: Samples, from: number, to: number): void {
  if (!(Number.isInteger(from) && Number.isInteger(to) && from >= 0 && to >= from)) {
    throw new RangeError(`bounds must be whole and in order, got ${from}, ${to}`);
  }
  if (to > samples.length) {
    throw new RangeError(`bounds must lie within ${samples.length} samples, got ${from}, ${to}`);
  }
}
