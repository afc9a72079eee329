import { msg, str } from '@lit/localize';
import { median } from '../../dsp/signal/median';
import { sentenceName } from '../proof/claim-answers';
import { unsureLevelDb } from '../proof/moved-microphone';
import { sayDb, sayLossDb } from '../proposal/phrases';
import { changeFigure, judgeChange, type ChangeLimits } from './judge-change';
import { makeFinding, speakerFinding } from './make-finding';
import type { PairedPosition, PairedSpeaker } from './pair-positions';
import { repeatedLevelHalfDb } from './reading-error';
import type { VisitFinding } from './visits';

const limits: ChangeLimits = { allowed: 0.5, coarsest: 1 };
/** All together may differ by this: nobody sets a volume or puts a calibrator on better. */
const allLimits: ChangeLimits = { allowed: 1, coarsest: 1 };
/** With so many mains the subs, whose band the room rules, are not asked what all have in common. */
const enoughMains = 3;

/** What the levels of a position have in common, and each speaker's beside it. */
export interface LevelChanges {
  /** How much louder all are than then, dB: gain, volume, microphone. Null without two speakers. */
  readonly commonDb: number | null;
  readonly findings: readonly VisitFinding[];
}

/**
 * Each speaker's level beside what all have in common, held against then. `absolute`: the sound
 * level was calibrated at both visits, and by how many dB its offset rose; null where it was not,
 * and a common difference then says nothing.
 */
export function compareLevels(
  pair: PairedPosition,
  movedMetres: number,
  absolute: number | null,
): LevelChanges {
  const rows = pair.speakers.flatMap((speaker) => rowOf(speaker));
  const mains = rows.filter(({ speaker }) => speaker.channel.kind !== 'sub');
  const asked = mains.length >= enoughMains ? mains : rows;
  if (asked.length < 2) return { commonDb: null, findings: rows.map((row) => alone(pair, row)) };
  const commonDb = median(asked.map(({ db }) => db));
  const agree = asked.filter(({ db, half }) => Math.abs(db - commonDb) <= limits.allowed + half);
  const isAgreed = 2 * agree.length > asked.length;
  const unsure = unsureLevelDb({ movedMetres });
  return {
    commonDb,
    findings: [
      together(pair, commonDb, unsure, absolute),
      ...rows.map((row) => beside(pair, row, commonDb, unsure, isAgreed)),
    ],
  };
}

interface Row {
  readonly speaker: PairedSpeaker;
  readonly db: number;
  readonly half: number;
}

function rowOf(speaker: PairedSpeaker): Row[] {
  const { now, before } = speaker;
  if (now.levelDb === null || before.levelDb === null) return [];
  const half = Math.hypot(repeatedLevelHalfDb(now), repeatedLevelHalfDb(before));
  return [{ speaker, db: now.levelDb - before.levelDb, half }];
}

function together(
  { position: { name: position } }: PairedPosition,
  commonDb: number,
  unsure: number,
  absolute: number | null,
): VisitFinding {
  if (absolute === null) {
    return makeFinding('level', 'all', {
      position,
      verdict: 'cannot tell',
      sentence: msg(
        str`All together read ${sayDb(commonDb)} beside then, which may be the volume, the test level or the microphone’s gain alone: it is taken out of what follows.`,
      ),
      action: msg('Calibrate the sound level at every visit.'),
    });
  }
  const db = commonDb + absolute;
  const half = 0.5 + unsure;
  const verdict = judgeChange(db, half, allLimits);
  const sentences = {
    'as it was': msg(
      str`All together are as loud as they were, to ${sayLossDb(Math.abs(db) + half)}.`,
    ),
    changed: msg(
      str`All together are ${sayLossDb(db)} ${db < 0 ? msg('quieter') : msg('louder')} than then, give or take ${sayLossDb(half)}: the volume, the test level or every amplifier.`,
    ),
    'cannot tell': msg(
      str`All together are ${sayLossDb(db)} ${db < 0 ? msg('quieter') : msg('louder')} than then, give or take ${sayLossDb(half)}.`,
    ),
  } as const;
  const figure = changeFigure(db, half, allLimits, 'dB');
  return makeFinding('level', 'all', { position, verdict, sentence: sentences[verdict], figure });
}

function beside(
  { position: { name: at } }: PairedPosition,
  { speaker: { channel }, db, half: own }: Row,
  commonDb: number,
  unsure: number,
  isAgreed: boolean,
): VisitFinding {
  const { label, name } = channel;
  const change = db - commonDb;
  const half = own + unsure;
  const judged = judgeChange(change, half, limits);
  const verdict = isAgreed ? judged : judged === 'changed' ? 'cannot tell' : judged;
  const way = change < 0 ? msg('quieter') : msg('louder');
  const amount = msg(str`${sayLossDb(change)} ${way} beside the others than it was`);
  const sentences = {
    'as it was': msg(
      str`${sentenceName(name)} is as loud beside the others as it was, to ${sayLossDb(Math.abs(change) + half)}.`,
    ),
    changed: msg(str`${sentenceName(name)} is ${amount}, give or take ${sayLossDb(half)}.`),
    'cannot tell':
      judged === 'changed'
        ? msg(
            str`${sentenceName(name)} is ${amount}; which of them changed cannot be told, because most of them do not agree.`,
          )
        : msg(str`${sentenceName(name)} is ${amount}, give or take ${sayLossDb(half)}.`),
  } as const;
  const action =
    unsure > own
      ? msg('Put the microphone where it stood then and take it again.')
      : judged === 'changed'
        ? msg('Calibrate the sound level at every visit.')
        : msg(str`Take ${at} again, louder.`);
  const figure = changeFigure(change, half, limits, 'dB');
  return speakerFinding('level', label, at, {
    verdict,
    sentence: sentences[verdict],
    figure,
    action,
  });
}

function alone({ position }: PairedPosition, { speaker: { channel } }: Row): VisitFinding {
  return speakerFinding('level', channel.label, position.name, {
    verdict: 'cannot tell',
    sentence: msg(
      str`How loud ${channel.name} is beside the others cannot be told: no other speaker was heard at both visits.`,
    ),
    action: msg('Take all speakers at one position.'),
  });
}
