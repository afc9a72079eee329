import { withUnit } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import { logGrid } from '../../dsp/response/smoothing';
import { throughPath } from '../../dsp/bass/electrical-path';
import { sayHz, sayNumber } from '../proposal/phrases';
import { sentenceName } from './claim-answers';
import { worstDeviation } from './claim-crossover';
import { crossoverOf, expectLfe } from './expect-bass';
import { subBand, type Findings } from './findings';
import { judgeInterval } from './judge-interval';
import { thirdOctaveAt } from '../reading/third-octave';
import { makeLine } from './make-line';
import { unsureShapeDb } from './moved-microphone';
import type { ProofLine } from './proof';
import type { ProofCase, ProvedChannel } from './proof-case';
import { levelDb } from './read-redirected';

/** Above the crossover nothing may have changed by more than this, dB in third octaves. */
const allowedDb = 2;
const allowedSubDb = 2.5;
const repeatDb = 0.3;
/** Above this LFE's own low-pass leaves too little. */
const subShapeTopHz = 120;
const lowestHz = 120;
const highestHz = 10_000;
/** Nearer to the noise a response says nothing, dB. */
const leastMarginDb = 10;

/**
 * Whether a main sounds above its crossover, and a sub through its filters, as it did before, so
 * that nothing else shapes it.
 */
export function claimResponse(proof: ProofCase, findings: Findings, one: ProvedChannel): ProofLine {
  const { label, name, kind } = one.channel;
  const line = (rest: Parameters<typeof makeLine>[3]): ProofLine =>
    makeLine('response', label, [label], rest);
  const isSub = kind === 'sub';
  if (proof.typed.equalised) {
    return line({
      verdict: 'cannot tell',
      sentence: msg(str`Whether ${name} is shaped by more than its own equaliser cannot be told.`),
      action: msg('Prove it with the equaliser bypassed.'),
    });
  }
  const worst = isSub ? worstOfSub(proof, findings, one) : worstChange(proof, one);
  if (!worst) {
    return line({
      verdict: 'cannot tell',
      sentence: msg(
        str`Whether the response of ${name} is shaped cannot be told: there are no two curves.`,
      ),
      action: msg('Read it in Probe and prove it again; from a terminal, use --curves.'),
    });
  }
  const half = repeatDb + unsureShapeDb(findings);
  const allowed = isSub ? allowedSubDb : allowedDb;
  const figure = {
    value: worst.db,
    interval: [worst.db - half, worst.db + half],
    allowed: [-allowed, allowed],
    unit: 'dB',
  } as const;
  const verdict = judgeInterval(figure);
  const amount = withUnit(sayNumber(Math.abs(worst.db), 1), 'dB');
  const sentences = {
    pass: msg(
      str`${sentenceName(name)} sounds ${isSub ? msg('through its filters') : msg('above its crossover')} as it should, to ${amount}.`,
    ),
    fail: msg(
      str`${sentenceName(name)} is shaped: at ${sayHz(worst.hz)} it is ${amount} ${worst.db < 0 ? msg('below') : msg('above')} what it should be.`,
    ),
    'cannot tell': msg(str`${sentenceName(name)} may be shaped: ${amount} at ${sayHz(worst.hz)}.`),
  } as const;
  return line({ verdict, sentence: sentences[verdict], figure });
}

/** The greatest deviation of a sub from its predicted shape in third octaves; null where not known. */
function worstOfSub(proof: ProofCase, { subFits }: Findings, one: ProvedChannel) {
  const expected = expectLfe(proof, one);
  const fit = subFits.get(one.channel.label);
  if (!expected || !one.bassAfter || !fit) return null;
  const level = levelDb(one.bassAfter, proof.hz, subBand) - levelDb(expected, proof.hz, subBand);
  const asLoud = throughPath([expected], { filters: [], gainDb: level }, proof.hz)[0] ?? expected;
  const middle = Math.sqrt(subBand[0] * subShapeTopHz);
  return worstDeviation(one.bassAfter, asLoud, proof.hz, middle);
}

/** The greatest change in third octaves from where the high-pass takes nothing; null without curves. */
function worstChange(proof: ProofCase, one: ProvedChannel) {
  const before = one.before?.curves?.response;
  const after = one.after?.curves?.response;
  if (!before || !after) return null;
  const from = Math.max(lowestHz, 2.5 * (crossoverOf(proof, one) ?? 0));
  let worst: { readonly db: number; readonly hz: number } | null = null;
  for (const f of logGrid(from, highestHz, 6)) {
    const [was, is] = [thirdOctaveAt(before, f), thirdOctaveAt(after, f)];
    if (!was || !is || Math.min(was.marginDb, is.marginDb) < leastMarginDb) continue;
    const db = is.db - was.db;
    if (!worst || Math.abs(db) > Math.abs(worst.db)) worst = { db, hz: f };
  }
  return worst;
}
