import type { RigKind } from '../../rig/port';
import type { SessionDocument } from '../document';

/**
 * Gain that takes and stops are played with, dB: the session's on a live rig, the practice room's
 * own there; a file for another player holds all of it.
 */
export function stimulusGainDb(
  { kind }: { readonly kind: RigKind },
  { live, practice }: SessionDocument,
): number {
  if (kind === 'live') return Math.min(live.gainDb, live.capDb);
  return kind === 'practice' ? practice.gainDb : 0;
}
