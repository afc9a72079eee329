import { msg, str } from '@lit/localize';
import { sayLossDb } from '../proposal/phrases';
import { changeFigure, judgeChange, type ChangeLimits } from './judge-change';
import { makeFinding } from './make-finding';
import type { PairedPosition } from './pair-positions';
import type { VisitFinding } from './visits';

const limits: ChangeLimits = { allowed: 3, coarsest: 3 };
/** Steady noise, read from a second or two of silence, differs by so much from take to take, dB. */
const halfDb = 1;
/** A microphone's gain is taken to be as it was when all levels agree this well, dB. */
const sameGainDb = 1;

/**
 * The room's noise held against then: in sound level where that was calibrated at both visits
 * (`absolute`: by how many dB its offset rose), else re full scale, which tells only while no gain
 * was changed (`commonDb`: how much louder all speakers read).
 */
export function compareNoise(
  { position: { name: position }, now, before }: PairedPosition,
  commonDb: number | null,
  absolute: number | null,
): VisitFinding[] {
  const db = now.capture.noiseFloorDb - before.capture.noiseFloorDb + (absolute ?? 0);
  if (!Number.isFinite(db)) return [];
  const judged = judgeChange(db, halfDb, limits);
  const isSameGain = absolute !== null || (commonDb !== null && Math.abs(commonDb) <= sameGainDb);
  const verdict = isSameGain ? judged : 'cannot tell';
  const amount = `${sayLossDb(db)} ${db < 0 ? 'less' : 'more'}`;
  const sentences = {
    'as it was': msg(str`The room is as quiet as it was, to ${sayLossDb(Math.abs(db) + halfDb)}.`),
    changed: msg(
      str`The room is ${sayLossDb(db)} ${db < 0 ? msg('quieter') : msg('noisier')} than then, give or take ${sayLossDb(halfDb)}.`,
    ),
    'cannot tell': isSameGain
      ? msg(str`The room’s noise reads ${amount} than then, give or take ${sayLossDb(halfDb)}.`)
      : msg(
          str`The room’s noise reads ${amount} than then, but so may a gain: all levels differ too, or cannot be compared.`,
        ),
  } as const;
  return [
    makeFinding('noise', '', {
      position,
      verdict,
      sentence: sentences[verdict],
      figure: changeFigure(db, halfDb, limits, 'dB'),
      action: isSameGain
        ? msg('Take it again when the room is steady.')
        : msg('Calibrate the sound level at every visit.'),
    }),
  ];
}
