import type { Channel, ChannelLabel, Layout } from '../system/channel';
import { nothingDeclared, type DeclaredSystem } from '../system/declared-system';
import { offsetOf, wrapDegrees, type SpeakerOffset } from '../system/speaker-offset';

/** Where nothing was declared: so far from the seat, and subs on the floor. */
const usualMetres = 2.3;
const subMetresDown = 0.8;
/** A bounced height stands on the speaker below it. */
const standMetres = 0.3;

/** Where the speakers of a layout stand, from the main seat, as far as it is declared. */
export function walkPlaces(
  { channels }: Layout,
  { places, bounced }: DeclaredSystem = nothingDeclared,
): ReadonlyMap<ChannelLabel, SpeakerOffset> {
  const placeOf = (channel: Channel): SpeakerOffset => {
    const distanceMetres = places[channel.label]?.distanceMetres ?? usualMetres;
    const offset = offsetOf({ ...channel, distanceMetres });
    return channel.kind === 'sub' ? { ...offset, upMetres: -subMetresDown } : offset;
  };
  return new Map(
    channels.map((channel) => {
      const stand = bounced.includes(channel.label) ? standOf(channel, channels) : null;
      if (!stand) return [channel.label, placeOf(channel)];
      const below = placeOf(stand);
      return [channel.label, { ...below, upMetres: below.upMetres + standMetres }];
    }),
  );
}

/** The speaker of the bed nearest in direction. */
function standOf(height: Channel, channels: readonly Channel[]): Channel | null {
  const apart = ({ azimuthDegrees }: Channel): number =>
    Math.abs(wrapDegrees(azimuthDegrees - height.azimuthDegrees));
  const bed = channels.filter(({ kind }) => kind === 'bed');
  return bed.reduce<Channel | null>(
    (best, one) => (best === null || apart(one) < apart(best) ? one : best),
    null,
  );
}
