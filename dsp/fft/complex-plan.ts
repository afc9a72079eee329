import FFT from 'fft.js';
import { deal, joinQuarters, quarterTurns } from './quarters';

/** Complex transform of one size, with room to work in; arrays hold interleaved re, im. */
export interface ComplexPlan {
  readonly size: number;
  /** Work space of 2·size numbers, shared by all plans: free until the next transform of any. */
  readonly work: Float64Array;
  /** out_k = Σ in_n e^(−2πi kn/size); out and in are different arrays of 2·size numbers. */
  forward(out: Float64Array, input: Float64Array): void;
  /** The inverse, scaled by 1/size. */
  inverse(out: Float64Array, input: Float64Array): void;
}

const plans = new Map<number, ComplexPlan>();
let room = new Float64Array(0);

/**
 * The plan of a size, made once: a plan costs as much as several transforms.
 * Throws RangeError when size is no power of two.
 */
export function complexPlan(size: number): ComplexPlan {
  const known = plans.get(size);
  if (known) return known;
  if (!Number.isInteger(size) || size < 1 || (size & (size - 1)) !== 0) {
    throw new RangeError(`size must be a power of two, got ${size}`);
  }
  const plan = size === 1 ? identityPlan() : makePlan(size);
  plans.set(size, plan);
  return plan;
}

/** From here on a transform and its tables are more than a core's own cache holds. */
const leastSplit = 131_072;

function makePlan(size: number): ComplexPlan {
  const transform = size < leastSplit ? wholeTransform(size) : splitTransform(size);
  if (room.length < 2 * size) room = new Float64Array(2 * size);
  let work = room.subarray(0, 2 * size);
  return {
    size,
    get work() {
      // A larger plan brought more room since.
      if (work.buffer !== room.buffer) work = room.subarray(0, 2 * size);
      return work;
    },
    forward: transform,
    inverse: (out, input) => {
      transform(out, input);
      reverse(out, size);
    },
  };
}

function wholeTransform(size: number): ComplexPlan['forward'] {
  const fft = new FFT(size);
  return (out, input) => fft.transform(out, input);
}

/** Of four transforms of a quarter of the size; see deal and joinQuarters. */
function splitTransform(size: number): ComplexPlan['forward'] {
  // Not split again: both would work in the same room.
  const quarter = size / 4;
  const forward = quarter < leastSplit ? complexPlan(quarter).forward : wholeTransform(quarter);
  const turns = quarterTurns(size);
  return (out, input) => {
    const work = room.subarray(0, 2 * size);
    deal(input, out);
    for (let from = 0; from < 2 * size; from += size / 2) {
      forward(work.subarray(from, from + size / 2), out.subarray(from, from + size / 2));
    }
    joinQuarters(work, turns, out);
  };
}

/** Makes an inverse transform of a forward one: point n is point −n of it, over size. */
function reverse(out: Float64Array, size: number): void {
  const scale = 1 / size;
  out[0] = scale * (out[0] ?? 0);
  out[1] = scale * (out[1] ?? 0);
  for (let n = 1, m = size - 1; n <= m; n++, m--) {
    const re = scale * (out[2 * n] ?? 0);
    const im = scale * (out[2 * n + 1] ?? 0);
    out[2 * n] = scale * (out[2 * m] ?? 0);
    out[2 * n + 1] = scale * (out[2 * m + 1] ?? 0);
    out[2 * m] = re;
    out[2 * m + 1] = im;
  }
}

/** One point is its own transform, which fft.js does not know. */
function identityPlan(): ComplexPlan {
  const copy = (out: Float64Array, input: Float64Array): void => {
    out.set(input.subarray(0, 2));
  };
  return { size: 1, work: new Float64Array(2), forward: copy, inverse: copy };
}
