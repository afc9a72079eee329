import type { Channel, ChannelLabel, Layout } from './channel';
import type { DeclaredPlace, DeclaredSystem } from './declared-system';
import { shareInside } from './room-outline';
import { offsetOf, type SpeakerOffset } from './speaker-offset';

/** What a place is held against: the layout at its declared angles and all that was declared. */
export interface DeclaredPlan {
  readonly layout: Layout;
  readonly system: DeclaredSystem;
  /** Where speakers stand whose distance is not known, metres. */
  readonly nominalMetres: number;
}

/** Subs of unknown distance stand farther out and heights farther in, so that none hides another. */
const nominalShare = { bed: 1, height: 0.8, sub: 1.25 } as const;

/** Distance at which a speaker stands whose distance is not known, metres. */
export function standInMetres(channel: Channel, nominalMetres: number): number {
  return nominalMetres * nominalShare[channel.kind];
}

/** The channel of a label. Throws RangeError when the layout has none. */
export function channelOf(layout: Layout, label: ChannelLabel): Channel {
  const found = layout.channels.find((channel) => channel.label === label);
  if (!found) throw new RangeError(`${layout.title} has no ${label}`);
  return found;
}

/** Direction and, where it was declared, distance of a speaker. */
export function standingPlace(
  { layout, system }: DeclaredPlan,
  label: ChannelLabel,
): DeclaredPlace {
  const { azimuthDegrees, elevationDegrees } = channelOf(layout, label);
  const distanceMetres = system.places[label]?.distanceMetres ?? null;
  return { azimuthDegrees, elevationDegrees, distanceMetres };
}

/**
 * Where a place lies in metres from the seat. An unknown distance is stood in for by the nominal
 * one, and by the wall when that comes first.
 */
export function standingOffset(
  { layout, system, nominalMetres }: DeclaredPlan,
  label: ChannelLabel,
  place: DeclaredPlace,
): SpeakerOffset {
  if (place.distanceMetres !== null) {
    return offsetOf({ ...place, distanceMetres: place.distanceMetres });
  }
  const distanceMetres = standInMetres(channelOf(layout, label), nominalMetres);
  const offset = offsetOf({ ...place, distanceMetres });
  if (!system.room) return offset;
  const share = shareInside(system.room, offset);
  return offsetOf({ ...place, distanceMetres: distanceMetres * share });
}
