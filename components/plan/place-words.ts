import type { Channel } from '../../src/system/channel';
import type { DeclaredPlace } from '../../src/system/declared-system';
import { metresText, numberText } from '../charts/number-text';
import { directionInWords } from './speaker-name';

/** "112° left, 2.35 m", with the elevation of what stands above or below the ears. */
export function placeInWords(place: DeclaredPlace): string {
  const azimuth = Number(place.azimuthDegrees.toFixed(1));
  const elevation = Number(place.elevationDegrees.toFixed(0));
  const parts = [directionInWords(azimuth)];
  if (elevation !== 0) {
    parts.push(`${numberText(Math.abs(elevation))}° ${elevation > 0 ? 'up' : 'down'}`);
  }
  parts.push(
    place.distanceMetres === null ? 'distance not known' : metresText(place.distanceMetres),
  );
  return parts.join(', ');
}

/** The name a screen reader says of a speaker that can be moved. */
export function movableName(channel: Channel, place: DeclaredPlace, bounced: boolean): string {
  const how = channel.kind === 'height' ? [bounced ? 'bounced off the ceiling' : 'aimed down'] : [];
  return [channel.label, channel.name, placeInWords(place), ...how].join(', ');
}
