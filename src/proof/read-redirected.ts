import { explainBy } from '../../dsp/comparison/explain-by';
import { powerOf } from '../../dsp/comparison/fit-path';
import { logBand } from '../../dsp/bass/log-band';
import type { Transfer } from '../../dsp/bass/transfer';
import { magnitude } from '../../dsp/filter/complex';
import { expectRedirected, expectThrough, heardRedirected, highPassOf } from './expect-bass';
import type { ProofCase, ProvedChannel } from './proof-case';

/** What the subs play of one main's bass. */
export interface Redirected {
  /** Level beside what was expected of it, dB, and the 90 % interval of it. */
  readonly db: number;
  readonly interval: readonly [number, number];
  /** How much louder LFE is on the subs than this bass says, dB; null where LFE was not heard. */
  readonly lfe: { readonly db: number; readonly half: number } | null;
}

const lowestHz = 22;
const highestHz = 150;
const silentDb = -60;

/**
 * The subs' share in the bass of a main about and below its crossover, told apart from the main's own
 * by the shape of the responses, whether its high-pass is in force or not. The subs sound as LFE was
 * just heard on them, else as expected. Null where the main's bass is not known before and after.
 */
export function readRedirected(
  proof: ProofCase,
  main: ProvedChannel,
  crossoverHz: number,
): Redirected | null {
  const { hz, typed } = proof;
  const expected = expectRedirected(proof, crossoverHz);
  const heard = heardRedirected(proof, crossoverHz);
  const own = expectThrough(proof, main, []);
  const crossed = expectThrough(proof, main, [highPassOf(typed, crossoverHz)]);
  const subs = heard ?? expected;
  if (!main.bassAfter || !own || !crossed || !subs) return null;
  const band = [
    Math.max(lowestHz, crossoverHz / 3),
    Math.min(highestHz, 1.5 * crossoverHz),
  ] as const;
  const found = explainBy(main.bassAfter, [subs, crossed, own], hz, band);
  const share = found?.shares[0];
  if (!share) return null;
  const size = magnitude(share.factor);
  const beside = expected ? levelDb(subs, hz, band) - levelDb(expected, hz, band) : 0;
  const inDb = (factor: number): number =>
    Math.max(silentDb, beside + 20 * Math.log10(Math.max(factor, 1e-9)));
  const half = (20 / Math.LN10) * Math.min(3, share.half / Math.max(size, 1e-9));
  return {
    db: inDb(size),
    interval: [inDb(size - share.half), inDb(size + share.half)],
    lfe:
      heard && size > 0.15 && size > 3 * share.half ? { db: -20 * Math.log10(size), half } : null,
  };
}

/** Pink level on a band, dB. */
export function levelDb(
  response: Transfer,
  hz: Float64Array,
  [lowHz, highHz]: readonly [number, number],
): number {
  const { first, weights } = logBand(hz, lowHz, highHz);
  const power = powerOf(response);
  const mean = weights.reduce((sum, weight, k) => sum + weight * (power[first + k] ?? 0), 0);
  return 10 * Math.log10(Math.max(mean, 1e-30));
}
