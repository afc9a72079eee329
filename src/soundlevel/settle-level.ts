import { powerToDb } from '../../dsp/level/decibels';
import { isTrouble, type Trouble } from '../trouble';
import type { ClimbEar, Hearing } from './climb-ear';

/** A level after a change, once it has come to rest. */
export interface Settled {
  readonly hearing: Hearing;
  /** Why it did not wait for the rest: the gain must come down at once. */
  readonly alarm: 'clipping' | 'too loud' | null;
  /** False when it stayed far from the level that was expected. */
  readonly follows: boolean;
}

export interface SettleRequest {
  /** Shortest wait before anything is believed, beside one whole period. */
  readonly leastSeconds: number;
  /** Power the band should reach; null when it cannot be foretold. */
  readonly expectedPower: number | null;
  /** What noise alone moves the level of one period by, dB (standard deviation). */
  readonly spreadDb: number;
  /** C-weighted level, dB re full scale, that must not be passed; Infinity when unknown. */
  readonly mostDb: number;
  /** No alarm so soon after a drop: what was loud is still on its way. */
  readonly deafSeconds: number;
  readonly onHop: (hearing: Hearing) => void;
}

/** Longest delay of a chain that is waited for. */
const mostSeconds = 6;
/** Two periods that differ by less are at rest, dB, beside what noise does. */
const restDb = 0.25;
/** A level so near what was expected has followed, dB, beside what noise does. */
const closeDb = 1.5;

/**
 * Listens until the level has come to rest: after the shortest wait, when it is near what was
 * expected and one period is like the one before. How late sound comes is not known beforehand, so
 * a level that should have changed and has not is waited for, six seconds at most.
 */
export async function settleLevel(
  ear: ClimbEar,
  request: SettleRequest,
): Promise<Settled | Trouble> {
  const { expectedPower, spreadDb } = request;
  const period = 4 * ear.hopSeconds;
  const recent: number[] = [];
  const isNear = (power: number, expected: number): boolean =>
    differenceDb(power, expected) < closeDb + 3 * spreadDb;
  for (let at = ear.hopSeconds; ; at += ear.hopSeconds) {
    const hearing = await ear.listen();
    if (isTrouble(hearing)) return hearing;
    request.onHop(hearing);
    const isDeaf = at <= request.deafSeconds;
    if (hearing.clipped && !isDeaf) return { hearing, alarm: 'clipping', follows: true };
    const isLoud = hearing.cWeightedDb > request.mostDb;
    if (isLoud && at >= period && !isDeaf) return { hearing, alarm: 'too loud', follows: true };
    recent.push(hearing.bandPower);
    const before = recent.length > 4 ? recent.shift() : undefined;
    if (at < request.leastSeconds + period || before === undefined) continue;
    if (expectedPower === null) return { hearing, alarm: null, follows: true };
    if (at > mostSeconds) {
      return { hearing, alarm: null, follows: isNear(hearing.bandPower, expectedPower) };
    }
    const rests = differenceDb(hearing.bandPower, before) < restDb + 3 * spreadDb;
    if (rests && isNear(hearing.bandPower, expectedPower)) {
      return { hearing, alarm: null, follows: true };
    }
  }
}

function differenceDb(a: number, b: number): number {
  return Math.abs(powerToDb(a) - powerToDb(b));
}
