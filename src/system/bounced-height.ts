import type { ChannelLabel } from './channel';
import { placeOf } from './speaker-offset';
import { channelOf, standingOffset, standingPlace, type DeclaredPlan } from './standing-place';

/**
 * The elevation a speaker is heard at, degrees: where it stands, or for a bounced height the mirror
 * image of it in the ceiling; null when room or distance that would tell are not known.
 */
export function apparentElevation(plan: DeclaredPlan, label: ChannelLabel): number | null {
  const { room, bounced } = plan.system;
  if (!bounced.includes(label)) return channelOf(plan.layout, label).elevationDegrees;
  const place = standingPlace(plan, label);
  if (!room || place.distanceMetres === null) return null;
  const offset = standingOffset(plan, label, place);
  const ceilingMetres = room.heightMetres - room.earHeightMetres;
  return placeOf({ ...offset, upMetres: 2 * ceilingMetres - offset.upMetres }).elevationDegrees;
}
