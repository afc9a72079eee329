import { median } from '../../dsp/signal/median';
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

/**
 * What was heard in two plays of one stop, such as two rounds of plugs. Each play has a clock of its
 * own: the newer one is moved onto that of the sounds that stay, by channels that sounded in both;
 * without one its arrivals cannot be told, its levels can.
 */
export function joinSounds(
  before: readonly WalkSound[],
  now: readonly WalkSound[],
): readonly WalkSound[] {
  const kept = before.filter((one) => !now.some(({ channel }) => channel === one.channel));
  if (kept.length === 0) return now;
  const apart = now.flatMap(({ channel, arrivalSeconds }) => {
    const other = before.find((one) => one.channel === channel)?.arrivalSeconds ?? null;
    return other === null || arrivalSeconds === null ? [] : [other - arrivalSeconds];
  });
  const moved = now.map((sound) => {
    const { arrivalSeconds } = sound;
    const told = apart.length > 0 && arrivalSeconds !== null;
    return { ...sound, arrivalSeconds: told ? arrivalSeconds + median(apart) : null };
  });
  return [...kept, ...moved];
}
