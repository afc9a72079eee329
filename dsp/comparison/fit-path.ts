import { logBand, smoothOnGrid } from '../bass/log-band';
import type { Transfer } from '../bass/transfer';

/** What lies between two responses of one source: gain, delay and polarity. */
export interface PathFit {
  readonly gainDb: number;
  /** Later than expected when above 0. */
  readonly delaySeconds: number;
  readonly inverted: boolean;
  /** Correlation of the two once gain, delay and polarity are taken out, 0 … 1. */
  readonly agreement: number;
  /** Half widths of the 90 % intervals, from what the fit leaves. */
  readonly halfDb: number;
  readonly halfSeconds: number;
}

/** Coarse step of the delay: a twentieth of a period at 200 Hz. */
const stepSeconds = 0.25e-3;
/** Bass of a room says something new six times an octave. */
const saysPerOctave = 6;
const two90 = 1.645;

/**
 * Real gain g and delay τ that bring `expected` nearest to `measured` on a band: the largest
 * |Re Σ w M conj(E) e^(iωτ)| within ±mostSeconds, with w = 1/|E|² in octave means, so that every
 * octave counts alike. Null for silence. Throws RangeError for a band the grid does not hold.
 * Least squares; own method for the weights.
 */
export function fitPath(
  measured: Transfer,
  expected: Transfer,
  hz: Float64Array,
  [lowHz, highHz]: readonly [number, number],
  mostSeconds = 0.04,
): PathFit | null {
  const { first, weights } = logBand(hz, lowHz, highHz);
  const smooth = smoothOnGrid(hz, powerOf(expected), 1);
  const points = Array.from(weights, (weight, k) => {
    const at = first + k;
    const size = smooth[at] ?? 0;
    const [a, b] = [measured.re[at] ?? 0, measured.im[at] ?? 0];
    const [c, d] = [expected.re[at] ?? 0, expected.im[at] ?? 0];
    const w = size > 0 ? weight / size : 0;
    return {
      omega: 2 * Math.PI * (hz[at] ?? 0),
      re: w * (a * c + b * d),
      im: w * (b * c - a * d),
      measured: w * (a * a + b * b),
      expected: w * (c * c + d * d),
    };
  });
  const total = (key: 'measured' | 'expected'): number =>
    points.reduce((sum, point) => sum + point[key], 0);
  const [whole, own] = [total('measured'), total('expected')];
  if (!(whole > 0 && own > 0)) return null;
  const alike = (delay: number): number =>
    points.reduce(
      (sum, { omega, re, im }) => sum + re * Math.cos(omega * delay) - im * Math.sin(omega * delay),
      0,
    );
  let best = 0;
  for (let delay = -mostSeconds; delay <= mostSeconds; delay += stepSeconds) {
    if (Math.abs(alike(delay)) > Math.abs(alike(best))) best = delay;
  }
  for (let step = stepSeconds / 2; step > 1e-8; step /= 2) {
    for (const delay of [best - step, best + step]) {
      if (Math.abs(alike(delay)) > Math.abs(alike(best))) best = delay;
    }
  }
  const found = alike(best);
  const gain = Math.abs(found) / own;
  const agreement = Math.min(1, Math.abs(found) / Math.sqrt(whole * own));
  if (!(gain > 0)) return null;
  const count = Math.max(2, saysPerOctave * Math.log2(highHz / lowHz));
  const left = Math.sqrt(Math.max(0, 1 - agreement ** 2) / (2 * count)) / agreement;
  const turn = points.reduce((sum, point) => sum + point.expected * point.omega ** 2, 0) / own;
  return {
    gainDb: 20 * Math.log10(gain),
    delaySeconds: best,
    inverted: found < 0,
    agreement,
    halfDb: (20 / Math.LN10) * two90 * left,
    halfSeconds: (two90 * left) / Math.sqrt(turn),
  };
}

/** |H|² over the grid. */
export function powerOf({ re, im }: Transfer): Float64Array {
  return re.map((a, k) => a * a + (im[k] ?? 0) ** 2);
}
