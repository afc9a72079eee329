import { msg, str } from '@lit/localize';
import { median } from '../../dsp/signal/median';
import { sayLossDb } from '../proposal/phrases';
import { levelHalfDb } from '../reading/move-level';
import { sentenceName } from './claim-answers';
import type { Findings } from './findings';
import { figureAround, judgeInterval } from './judge-interval';
import { makeLine } from './make-line';
import { unsureLevelDb } from './moved-microphone';
import type { ProofLine } from './proof';
import type { ProofCase, ProvedChannel } from './proof-case';

/** Levels are equal within this, dB, beside the processor's steps. */
const allowedDb = 0.5;
/** Two readings at one place agree within this, dB. */
const repeatDb = 0.1;
/** LFE off by more is a setting of its own, and not the trim of a sub. */
const lfeCountsDb = 1;

/**
 * Whether a main is as loud at the seat as the middle of the mains, and a sub as its trim makes it;
 * an error that all subs have through LFE alone is not counted to their trims.
 */
export function claimLevel(proof: ProofCase, findings: Findings, one: ProvedChannel): ProofLine {
  const { label, name, kind } = one.channel;
  const found = kind === 'sub' ? subLevel(findings, one) : mainLevel(proof, one);
  if (!found) {
    return makeLine('level', label, [label], {
      verdict: 'cannot tell',
      sentence: msg(str`How loud ${name} is beside the others cannot be told.`),
    });
  }
  const half = found.half + unsureLevelDb(findings);
  const figure = figureAround(found.db, half, allowedLevelDb(proof), 'dB');
  const verdict = judgeInterval(figure);
  const amount = sayLossDb(figure.value);
  const way = figure.value < 0 ? 'quiet' : 'loud';
  const sentences = {
    pass: msg(str`${sentenceName(name)} is as loud as it should be, to ${amount}.`),
    fail: msg(str`${sentenceName(name)} is ${amount} too ${way}.`),
    'cannot tell': msg(
      str`${sentenceName(name)} is ${amount} too ${way}, give or take ${sayLossDb(half)}.`,
    ),
  } as const;
  return makeLine('level', label, [label], { verdict, sentence: sentences[verdict], figure });
}

/** How far a level may be off, dB: own rounding and that of the middle included. */
export function allowedLevelDb({ steps }: ProofCase): number {
  return allowedDb + steps.levelStepDb / 2;
}

function mainLevel({ mains }: ProofCase, { after }: ProvedChannel) {
  const levels = mains.flatMap((main) => main.after?.levelDb ?? []);
  if (typeof after?.levelDb !== 'number') return null;
  return {
    db: after.levelDb - median(levels),
    half: Math.hypot(repeatDb, levelHalfDb(after) ?? 0),
  };
}

function subLevel({ subFits, lfe }: Findings, { channel }: ProvedChannel) {
  const fit = subFits.get(channel.label);
  if (!fit) return null;
  const common = lfe && Math.abs(lfe.db) > lfeCountsDb ? lfe.db : 0;
  return { db: fit.gainDb - common, half: Math.hypot(repeatDb, fit.halfDb) };
}
