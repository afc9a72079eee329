import { logBand, smoothOnGrid } from '../bass/log-band';
import type { Transfer } from '../bass/transfer';
import { magnitude, multiply, type Complex } from '../filter/complex';
import { powerOf } from './fit-path';
import { solveComplex } from './solve-complex';

/** How much of one part a response holds. */
export interface Share {
  /** 1 where it holds the part as it is. */
  readonly factor: Complex;
  /** Half width of the 90 % interval of |factor|, from what is not explained. */
  readonly half: number;
  /** Power of the part in the response over all of it, 0 or more. */
  readonly power: number;
}

export interface Explanation {
  /** One per part, in order. */
  readonly shares: readonly Share[];
  /** Power that no part explains, of all of it, 0 … 1. */
  readonly unexplained: number;
}

const saysPerOctave = 6;
const two90 = 1.645;
/** Parts that look alike are told apart no better than this. */
const ridge = 1e-6;

/**
 * The sum Σ c_j·P_j, with constant complex c_j, that comes nearest to a response on a band, every
 * octave counted alike. Null where the response is silent. Throws RangeError for no parts, or a
 * band the grid does not hold. Weighted least squares by normal equations.
 */
export function explainBy(
  response: Transfer,
  parts: readonly Transfer[],
  hz: Float64Array,
  [lowHz, highHz]: readonly [number, number],
): Explanation | null {
  if (parts.length === 0) throw new RangeError('parts must hold at least one, got none');
  const { first, weights } = logBand(hz, lowHz, highHz);
  const smooth = smoothOnGrid(hz, powerOf(response), 1);
  const w = Array.from(weights, (weight, k) => {
    const size = smooth[first + k] ?? 0;
    return size > 0 ? weight / size : 0;
  });
  const inner = (a: Transfer, b: Transfer): Complex => {
    let [re, im] = [0, 0];
    for (const [k, weight] of w.entries()) {
      const at = first + k;
      const [x, y] = [a.re[at] ?? 0, a.im[at] ?? 0];
      const [u, v] = [b.re[at] ?? 0, b.im[at] ?? 0];
      re += weight * (x * u + y * v);
      im += weight * (x * v - y * u);
    }
    return { re, im };
  };
  const whole = inner(response, response).re;
  if (!(whole > 0)) return null;
  const matrix = parts.map((row, j) =>
    parts.map((column, k) => {
      const { re, im } = inner(row, column);
      return { re: j === k ? re * (1 + ridge) + 1e-12 * whole : re, im };
    }),
  );
  const right = parts.map((part) => inner(part, response));
  const factors = solveComplex(matrix, right);
  const explained = factors.reduce((sum, factor, j) => {
    const { re, im } = right[j] ?? { re: 0, im: 0 };
    return sum + multiply({ re: factor.re, im: -factor.im }, { re, im }).re;
  }, 0);
  const unexplained = Math.min(1, Math.max(0, 1 - explained / whole));
  const count = Math.max(1, saysPerOctave * Math.log2(highHz / lowHz) - parts.length);
  const shares = factors.map((factor, j): Share => {
    const unit = parts.map((_, k) => ({ re: k === j ? 1 : 0, im: 0 }));
    const spread = solveComplex(matrix, unit)[j]?.re ?? 0;
    const own = inner(parts[j] ?? response, parts[j] ?? response).re;
    return {
      factor,
      half: two90 * Math.sqrt(Math.max(0, spread) * ((unexplained * whole) / (2 * count))),
      power: (magnitude(factor) ** 2 * own) / whole,
    };
  });
  return { shares, unexplained };
}
