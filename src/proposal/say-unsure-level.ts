import { msg, str } from '@lit/localize';
import { levelHalfDb } from '../reading/move-level';
import type { ChannelReading } from '../reading/reading';
import { sayLossDb } from './phrases';
import type { Reason } from './reason';

/** A narrower interval than this is not worth a word, dB. */
const worthDb = 0.1;

/**
 * How far the noise leaves a level unsure beside the one it is set against, when the 90 % interval
 * of their difference is wider than a tenth of a decibel or a finer step of the trim; none otherwise
 * and in older sessions, which have no intervals.
 */
export function sayUnsureLevel(
  level: ChannelReading | null,
  against: ChannelReading | null,
  stepDb: number,
): Reason[] {
  const own = level && levelHalfDb(level);
  if (own === null) return [];
  const half = Math.hypot(own, (against && levelHalfDb(against)) ?? 0);
  if (2 * half <= Math.min(stepDb, worthDb)) return [];
  const sentence = msg(
    str`Because of the noise this level holds to ${sayLossDb(half)} only, nine times in ten.`,
  );
  return [{ sentence, grounds: [] }];
}
