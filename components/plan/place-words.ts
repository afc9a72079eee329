import { msg } from '@lit/localize';
import type { Channel } from '../../src/system/channel';
import type { DeclaredPlace } from '../../src/system/declared-system';
import { lengthText } from '../../src/locale/length-text';
import { directionInWords, elevationInWords } from './speaker-name';

/** "112° left, 2.35 m", with the elevation of what stands above or below the ears. */
export function placeInWords(place: DeclaredPlace): string {
  const parts = [directionInWords(place.azimuthDegrees)];
  const elevation = elevationInWords(place.elevationDegrees);
  if (elevation !== 'ear height') parts.push(elevation);
  parts.push(
    place.distanceMetres === null ? msg('distance not known') : lengthText(place.distanceMetres),
  );
  return parts.join(', ');
}

/** The name a screen reader says of a speaker that can be moved. */
export function movableName(channel: Channel, place: DeclaredPlace, bounced: boolean): string {
  const how =
    channel.kind === 'height' ? [bounced ? msg('bounced off the ceiling') : msg('aimed down')] : [];
  return [channel.label, channel.name, placeInWords(place), ...how].join(', ');
}
