import { msg } from '@lit/localize';
import type { ChannelLabel } from '../../system/channel';
import { isTrouble, trouble, type Trouble } from '../../trouble';
import { isOldProof, wantedSettings } from '../derive-proof';
import type { Desk } from '../desk';
import type { Proving } from '../document';
import type { BenchRoom } from './bench-room';
import { runTakes } from './run-takes';

/**
 * Plays speakers through the processor as it will play, all when null. All of them too when the
 * reference speaker is among them: every other one is held against it. Subs are played through
 * LFE, one after another.
 */
export async function runProof(
  room: BenchRoom,
  channels: readonly ChannelLabel[] | null,
  signal: AbortSignal,
): Promise<Trouble | null> {
  const { state } = room.desk;
  const wanted = toProve(room.desk);
  if (isTrouble(wanted)) return wanted;
  const { proof } = state;
  // A line alone is held against the others, and those were played with the same settings.
  const isAlone =
    channels !== null &&
    proof !== null &&
    !isOldProof(state) &&
    !channels.includes(proof.readings.reference);
  const problem = isAlone
    ? await runTakes(room, channels, signal, { ...wanted, id: proof.id })
    : await runTakes(room, null, signal, wanted);
  await room.judge.settled(signal);
  return problem;
}

/** A new proof of the settings that are to be typed now, or why there can be none yet. */
export function toProve({ state, parts }: Desk): Proving | Trouble {
  const { proposal, document } = state;
  if (!proposal) return nothingToProve();
  if (proposal.sums !== 'there') return stillComing();
  return { id: parts.newId(), settings: wantedSettings(proposal, document) };
}

const stillComing = () =>
  trouble(
    'failed',
    msg('The settings are still being worked out. Wait until the sums are there, then prove.'),
  );

const nothingToProve = () =>
  trouble('failed', msg('There are no settings to prove yet: take the system in Probe first.'));
