import { pathResponse } from './electrical-path';
import type { SixthOctaves } from './sixth-octaves';
import type { SeatTransfers } from './transfer';

/** What one of several subs is set to, against the first. */
export interface SubSetting {
  readonly delaySeconds: number;
  readonly gainDb: number;
  readonly inverted: boolean;
}

/** How evenly several subs together reach the seats. */
export interface SeatSpread {
  /** Rms over the band of the standard deviation over seats of the 1/6-octave level, dB. */
  readonly deviationDb: number;
  /** Mean level over band and seats re the loudest response times the sum of gains, dB. */
  readonly levelDb: number;
  /** What is made least: deviation − 0.03 · level. */
  readonly cost: number;
}

const levelShare = 0.03;
/** Powers below this re the loudest count as this. */
const leastPower = 1e-12;
const dbPerNeper = 10 / Math.LN10;

/** All subs added up at every seat: [seat][frequency of the band] as re, im. */
export interface FieldSum {
  readonly re: readonly Float64Array[];
  readonly im: readonly Float64Array[];
}

/**
 * Spread of a field: in each 1/6 octave the standard deviation over seats of its level, its rms
 * over the band; and the mean level less 20 log Σ gains. Narrower dips are not heard.
 */
export function spreadOf(
  field: FieldSum,
  gainSum: number,
  { edges, shares, weights }: SixthOctaves,
): SeatSpread {
  const seats = field.re.length;
  let [variance, level] = [0, 0];
  for (let band = 0; band < weights.length; band++) {
    let [sum, squares] = [0, 0];
    const end = edges[band + 1] ?? 0;
    for (let seat = 0; seat < seats; seat++) {
      const [re, im] = [field.re[seat], field.im[seat]];
      let power = leastPower;
      for (let k = edges[band] ?? 0; k < end; k++) {
        const [a, b] = [re?.[k] ?? 0, im?.[k] ?? 0];
        power += (shares[k] ?? 0) * (a * a + b * b);
      }
      const db = dbPerNeper * Math.log(power);
      sum += db;
      squares += db * db;
    }
    const mean = sum / seats;
    variance += (weights[band] ?? 0) * Math.max(0, squares / seats - mean * mean);
    level += (weights[band] ?? 0) * mean;
  }
  const deviationDb = Math.sqrt(variance);
  const levelDb = level - 2 * dbPerNeper * Math.log(gainSum);
  return { deviationDb, levelDb, cost: deviationDb - levelShare * levelDb };
}

/** Subs at all seats in one band, scaled so that the loudest power is about 1. */
export function fieldsOf(
  subs: readonly SeatTransfers[],
  { first, hz }: SixthOctaves,
): readonly FieldSum[] {
  const end = first + hz.length;
  let most = 0;
  for (const sub of subs) {
    for (const { re, im } of sub) {
      for (let k = first; k < end; k++) most = Math.max(most, Math.hypot(re[k] ?? 0, im[k] ?? 0));
    }
  }
  if (!(most > 0)) throw new RangeError('subs must sound in the band, got silence');
  const cut = (values: Float64Array): Float64Array =>
    values.slice(first, end).map((value) => value / most);
  return subs.map((sub) => ({
    re: sub.map(({ re }) => cut(re)),
    im: sub.map(({ im }) => cut(im)),
  }));
}

/** An empty field of the size of another. */
export function silence(like: FieldSum): FieldSum {
  return {
    re: like.re.map(({ length }) => new Float64Array(length)),
    im: like.im.map(({ length }) => new Float64Array(length)),
  };
}

/** into ← base + sub through its setting, at the band's frequencies. */
export function addSub(
  into: FieldSum,
  base: FieldSum,
  sub: FieldSum,
  setting: SubSetting,
  bandHz: Float64Array,
): void {
  const turned = pathResponse({ filters: [], ...setting }, bandHz);
  addTurned(into, base, sub, turned.re, turned.im, 1);
}

/** into ← base + gain · turn · sub, `turn` one complex number per frequency. */
export function addTurned(
  into: FieldSum,
  base: FieldSum,
  sub: FieldSum,
  turnRe: Float64Array,
  turnIm: Float64Array,
  gain: number,
): void {
  for (let seat = 0; seat < sub.re.length; seat++) {
    const [toRe, toIm] = [into.re[seat], into.im[seat]];
    const [fromRe, fromIm] = [base.re[seat], base.im[seat]];
    const [re, im] = [sub.re[seat], sub.im[seat]];
    if (!toRe || !toIm || !fromRe || !fromIm || !re || !im) continue;
    for (let k = 0; k < toRe.length; k++) {
      const [a, b] = [re[k] ?? 0, im[k] ?? 0];
      const [c, d] = [gain * (turnRe[k] ?? 0), gain * (turnIm[k] ?? 0)];
      toRe[k] = (fromRe[k] ?? 0) + a * c - b * d;
      toIm[k] = (fromIm[k] ?? 0) + a * d + b * c;
    }
  }
}
