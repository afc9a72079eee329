import type { ChannelLabel } from '../system/channel';
import type { WalkSound, WalkStop } from '../wirecheck/walk';
import type { WalkPosition } from './bench';
import type { SessionDocument } from './document';

/** The document with what was heard at a stop; channels that did not play keep what they had. */
export function withStop(
  document: SessionDocument,
  at: WalkPosition,
  sounds: readonly WalkSound[],
): SessionDocument {
  if (at === 'seat') {
    return { ...document, seatSounds: joinSounds(document.seatSounds, sounds) };
  }
  const before = document.walk.find(({ speaker }) => speaker === at)?.sounds ?? [];
  const stop: WalkStop = { speaker: at, sounds: joinSounds(before, sounds) };
  return { ...document, walk: [...document.walk.filter(({ speaker }) => speaker !== at), stop] };
}

/** The document without the stops at some speakers, which are then to be visited again. */
export function withoutStops(
  document: SessionDocument,
  speakers: readonly ChannelLabel[],
): SessionDocument {
  const walk = document.walk.filter(({ speaker }) => !speakers.includes(speaker));
  return { ...document, walk };
}

function joinSounds(before: readonly WalkSound[], now: readonly WalkSound[]): WalkSound[] {
  const kept = before.filter((one) => !now.some(({ channel }) => channel === one.channel));
  return [...kept, ...now];
}
