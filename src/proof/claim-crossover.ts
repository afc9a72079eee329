import { withUnit } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import { smoothOnGrid } from '../../dsp/bass/log-band';
import type { Transfer } from '../../dsp/bass/transfer';
import { powerOf } from '../../dsp/comparison/fit-path';
import { sayHz, sayNumber } from '../proposal/phrases';
import { sentenceName } from './claim-answers';
import { addKnown, crossoverOf, expectRedirected, expectThrough, highPassOf } from './expect-bass';
import type { Findings } from './findings';
import { judgeInterval } from './judge-interval';
import { makeLine } from './make-line';
import { unsureShapeDb } from './moved-microphone';
import type { ProofLine } from './proof';
import type { ProofCase, ProvedChannel } from './proof-case';
import { levelDb } from './read-redirected';

/** The sum lies this near to what was predicted, and to both sides in phase, dB. */
export const allowedSumDb = 3;
/** A loss that was predicted is the proposal's, not of typing, if it is no deeper than this, dB. */
const deeperDb = 1;
const thirdOctave = 3;
const lowestHz = 22;
const highestHz = 400;

/**
 * Whether a speaker and the subs sum through their crossover as predicted, in third octaves from
 * half to twice the crossover, and lose no more than 3 dB in the octave about it against both in
 * phase; a greater loss that was predicted is told and stands.
 */
export function claimCrossover(
  proof: ProofCase,
  findings: Findings,
  one: ProvedChannel,
): ProofLine | null {
  const { label, name } = one.channel;
  const crossoverHz = crossoverOf(proof, one);
  if (crossoverHz === null || proof.subs.length === 0) return null;
  const sides = sidesOf(proof, one, crossoverHz);
  const { bassAfter, after } = one;
  if (!sides || !bassAfter) {
    return makeLine('crossover', label, [label], {
      verdict: 'cannot tell',
      sentence: msg(
        str`What ${name} and the subs should sum to at ${sayHz(crossoverHz)} cannot be predicted.`,
      ),
      action: msg('Read all speakers in one take in Probe with their crossovers at full range.'),
    });
  }
  const { hz } = proof;
  const expected = addKnown(sides.own, sides.subs);
  const worst = worstDeviation(bassAfter, expected, hz, crossoverHz);
  const half = noiseDb(after?.bassMarginDb ?? null) + unsureShapeDb(findings);
  const octave = [crossoverHz / Math.SQRT2, crossoverHz * Math.SQRT2] as const;
  const most = levelDb(inPhase(sides.own, sides.subs), hz, octave);
  const loss = most - levelDb(bassAfter, hz, octave);
  const predicted = most - levelDb(expected, hz, octave);
  const figure = {
    value: worst.db,
    interval: [worst.db - half, worst.db + half],
    allowed: [-allowedSumDb, allowedSumDb],
    unit: 'dB',
  } as const;
  const near = judgeInterval(figure);
  const isLost = loss - half > allowedSumDb && loss - half > predicted + deeperDb;
  const verdict = near === 'pass' && isLost ? 'fail' : near;
  const at = sayHz(worst.hz);
  const off = `${withUnit(sayNumber(Math.abs(worst.db), 1), 'dB')} ${worst.db < 0 ? msg('below') : msg('above')}`;
  const sentences = {
    pass: msg(
      str`${sentenceName(name)} and the subs sum as predicted at ${sayHz(crossoverHz)}, to ${withUnit(sayNumber(Math.abs(worst.db), 1), 'dB')}${
        loss > allowedSumDb
          ? msg(str`; as was predicted, they lose ${withUnit(sayNumber(loss, 1), 'dB')} there`)
          : ''
      }.`,
    ),
    fail: isLost
      ? msg(
          str`${sentenceName(name)} and the subs lose ${withUnit(sayNumber(loss, 1), 'dB')} at ${sayHz(crossoverHz)}; ${withUnit(sayNumber(predicted, 1), 'dB')} were predicted.`,
        )
      : msg(str`${sentenceName(name)} and the subs are ${off} the prediction at ${at}.`),
    'cannot tell': msg(
      str`${sentenceName(name)} and the subs are ${off} the prediction at ${at}, give or take ${withUnit(sayNumber(half, 1), 'dB')}.`,
    ),
  } as const;
  return makeLine('crossover', label, [label], { verdict, sentence: sentences[verdict], figure });
}

/** Both sides of a crossover as predicted; null where one is not known. */
export function sidesOf(proof: ProofCase, one: ProvedChannel, crossoverHz: number) {
  const own = expectThrough(proof, one, [highPassOf(proof.typed, crossoverHz)]);
  const subs = expectRedirected(proof, crossoverHz);
  return own && subs ? { own, subs } : null;
}

/** Third octaves that deviate most from a prediction about a crossover, dB. */
export function worstDeviation(
  measured: Transfer,
  expected: Transfer,
  hz: Float64Array,
  crossoverHz: number,
): { readonly db: number; readonly hz: number } {
  const is = smoothOnGrid(hz, powerOf(measured), thirdOctave);
  const was = smoothOnGrid(hz, powerOf(expected), thirdOctave);
  let worst = { db: 0, hz: crossoverHz };
  for (const [k, f] of hz.entries()) {
    if (f < Math.max(lowestHz, crossoverHz / 2) || f > Math.min(highestHz, 2 * crossoverHz))
      continue;
    const db = 10 * Math.log10(Math.max(is[k] ?? 0, 1e-30) / Math.max(was[k] ?? 0, 1e-30));
    if (Math.abs(db) > Math.abs(worst.db)) worst = { db, hz: f };
  }
  return worst;
}

/** |a| + |b| as a response. */
function inPhase(a: Transfer, b: Transfer): Transfer {
  const re = a.re.map(
    (x, k) => Math.hypot(x, a.im[k] ?? 0) + Math.hypot(b.re[k] ?? 0, b.im[k] ?? 0),
  );
  return { re, im: new Float64Array(re.length) };
}

/** What noise this far below can move a level by, dB; nothing is known without a margin. */
function noiseDb(marginDb: number | null): number {
  return marginDb === null ? 0 : 20 * Math.log10(1 + 10 ** (-Math.max(0, marginDb) / 20));
}
