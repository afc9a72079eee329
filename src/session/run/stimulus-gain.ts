import type { Rig } from '../../rig/port';
import type { SessionDocument } from '../document';

/** Gain that takes and stops are played with, dB: the session's on a live rig, all of it elsewhere. */
export function stimulusGainDb({ kind }: Rig, { live }: SessionDocument): number {
  return kind === 'live' ? Math.min(live.gainDb, live.capDb) : 0;
}
