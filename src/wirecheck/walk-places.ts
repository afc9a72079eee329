import type { Channel, ChannelLabel, Layout } from '../system/channel';
import { nothingDeclared, type DeclaredSystem } from '../system/declared-system';

/** Metres from the main seat: to the front, to the left, up. */
export type WalkPlace = readonly [x: number, y: number, z: number];

/** Where nothing was declared: so far from the seat, and subs on the floor. */
const usualMetres = 2.3;
const subMetresDown = 0.8;
/** A bounced height stands on the speaker below it. */
const standMetres = 0.3;

/** Where the speakers of a layout stand, as far as it is declared. */
export function walkPlaces(
  { channels }: Layout,
  { places, bounced }: DeclaredSystem = nothingDeclared,
): ReadonlyMap<ChannelLabel, WalkPlace> {
  const placeOf = ({ label, kind, azimuthDegrees, elevationDegrees }: Channel): WalkPlace => {
    const metres = places[label]?.distanceMetres ?? usualMetres;
    const [azimuth, elevation] = [radians(azimuthDegrees), radians(elevationDegrees)];
    const flat = metres * Math.cos(elevation);
    const up = kind === 'sub' ? -subMetresDown : metres * Math.sin(elevation);
    return [flat * Math.cos(azimuth), flat * Math.sin(azimuth), up];
  };
  return new Map(
    channels.map((channel) => {
      const stand = bounced.includes(channel.label) ? standOf(channel, channels) : null;
      if (!stand) return [channel.label, placeOf(channel)];
      const [x, y, z] = placeOf(stand);
      return [channel.label, [x, y, z + standMetres]];
    }),
  );
}

/** The speaker of the bed nearest in direction. */
function standOf(height: Channel, channels: readonly Channel[]): Channel | null {
  const apart = ({ azimuthDegrees }: Channel): number =>
    Math.abs(((azimuthDegrees - height.azimuthDegrees + 540) % 360) - 180);
  const bed = channels.filter(({ kind }) => kind === 'bed');
  return bed.reduce<Channel | null>(
    (best, one) => (best === null || apart(one) < apart(best) ? one : best),
    null,
  );
}

function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}
