import { withUnit } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import { sayHz, sayLossDb, sayNumber } from '../proposal/phrases';
import { median } from '../../dsp/signal/median';
import { crossoverOf } from './expect-bass';
import type { Findings } from './findings';
import { judgeInterval } from './judge-interval';
import { makeLine } from './make-line';
import type { ProofLine } from './proof';
import type { ProofCase, ProvedChannel } from './proof-case';

/** The subs' share of a main's bass is there when it is no more than this below what it should be, dB. */
const audibleDb = -6;
const allowedLfeDb = 1;

/** Whether the subs play the bass of a main below its crossover; null for full range. */
export function claimRedirected(
  proof: ProofCase,
  { redirected }: Findings,
  one: ProvedChannel,
): ProofLine | null {
  const { label, name } = one.channel;
  const crossoverHz = crossoverOf(proof, one);
  if (crossoverHz === null || proof.subs.length === 0) return null;
  const found = redirected.get(label);
  const line = (rest: Parameters<typeof makeLine>[3]): ProofLine =>
    makeLine('redirected bass', label, [label], rest);
  if (!found) {
    return line({
      verdict: 'cannot tell',
      sentence: msg(str`Whether the subs play the bass of ${name} cannot be told.`),
      action: msg('Read all speakers in one take in Probe with their crossovers at full range.'),
    });
  }
  const figure = {
    value: found.db,
    interval: found.interval,
    allowed: [audibleDb, Infinity],
    unit: 'dB',
  } as const;
  const verdict = judgeInterval(figure);
  const below = msg(str`below ${sayHz(crossoverHz)}`);
  const sentences = {
    pass: msg(str`The subs play the bass of ${name} ${below}.`),
    fail: msg(
      str`The subs do not play the bass of ${name} ${below} as they should: ${sayLossDb(found.db)} too little.`,
    ),
    'cannot tell': msg(
      str`Whether the subs play the bass of ${name} ${below} cannot be told: between ${sayNumber(found.interval[0], 0)} and ${withUnit(sayNumber(found.interval[1], 0), 'dB')} beside what they should.`,
    ),
  } as const;
  // A table holds no infinite number.
  const finite = { ...figure, allowed: [audibleDb, 60] as const };
  return line({ verdict, sentence: sentences[verdict], figure: finite });
}

/** Whether LFE is replayed as loud as bass of the mains asks for; null without subs. */
export function claimLfe(proof: ProofCase, findings: Findings): ProofLine | null {
  const { subs, steps, typed } = proof;
  const labels = subs.map(({ channel }) => channel.label);
  if (labels.length === 0) return null;
  const alone = labels.flatMap((label) => findings.subFits.get(label) ?? []);
  const found =
    findings.lfe ??
    (alone.length === 0
      ? null
      : {
          db: median(alone.map(({ gainDb }) => gainDb)),
          half: median(alone.map(({ halfDb }) => halfDb)),
        });
  if (!found) {
    return makeLine('LFE', 'LFE', labels, {
      verdict: 'cannot tell',
      sentence: msg('How loud LFE is cannot be told: the subs were not read before and after.'),
      action: msg('Read the subs in Probe, then prove them again.'),
    });
  }
  const allowed = allowedLfeDb + steps.levelStepDb;
  const figure = {
    value: found.db,
    interval: [found.db - found.half, found.db + found.half],
    allowed: [-allowed, allowed],
    unit: 'dB',
  } as const;
  const verdict = judgeInterval(figure);
  const gain = msg(str`${withUnit(sayNumber(typed.lfe.gainDb, 0), 'dB')} over a main channel`);
  const off = msg(str`${sayLossDb(found.db)} too ${found.db < 0 ? msg('quiet') : msg('loud')}`);
  const sentences = {
    pass: msg(str`LFE is replayed ${gain}, to ${sayLossDb(found.db)}.`),
    fail: msg(str`LFE is ${off}: it should be ${gain}.`),
    'cannot tell': msg(str`LFE is ${off}, give or take ${sayLossDb(found.half)}.`),
  } as const;
  return makeLine('LFE', 'LFE', labels, { verdict, sentence: sentences[verdict], figure });
}
