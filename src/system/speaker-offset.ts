import type { DeclaredPlace } from './declared-system';

/** A place in metres from the ears at the main seat: right, back and up are positive. */
export interface SpeakerOffset {
  readonly rightMetres: number;
  readonly backMetres: number;
  readonly upMetres: number;
}

/** A direction and a distance, which here is always known. */
export type PolarPlace = Omit<DeclaredPlace, 'distanceMetres'> & {
  readonly distanceMetres: number;
};

/** Metres from the seat of a direction (degrees, positive left and up) and distance, metres. */
export function offsetOf(place: PolarPlace): SpeakerOffset {
  const azimuth = (place.azimuthDegrees * Math.PI) / 180;
  const elevation = (place.elevationDegrees * Math.PI) / 180;
  const horizontal = place.distanceMetres * Math.cos(elevation);
  return {
    rightMetres: -Math.sin(azimuth) * horizontal,
    backMetres: -Math.cos(azimuth) * horizontal,
    upMetres: place.distanceMetres * Math.sin(elevation),
  };
}

/**
 * Direction and distance of a place in metres from the seat; the way back from offsetOf. Straight
 * above or below, and at the seat itself, the azimuth is 0.
 */
export function placeOf({ rightMetres, backMetres, upMetres }: SpeakerOffset): PolarPlace {
  const horizontal = Math.hypot(rightMetres, backMetres);
  const azimuth = horizontal === 0 ? 0 : Math.atan2(-rightMetres, -backMetres);
  const elevation = horizontal === 0 && upMetres === 0 ? 0 : Math.atan2(upMetres, horizontal);
  return {
    azimuthDegrees: (azimuth * 180) / Math.PI,
    elevationDegrees: (elevation * 180) / Math.PI,
    distanceMetres: Math.hypot(horizontal, upMetres),
  };
}

/** Straight line between two places, metres. */
export function metresBetween(a: SpeakerOffset, b: SpeakerOffset): number {
  return Math.hypot(
    a.rightMetres - b.rightMetres,
    a.backMetres - b.backMetres,
    a.upMetres - b.upMetres,
  );
}

/** An angle brought into −180 to 180 degrees. */
export function wrapDegrees(degrees: number): number {
  const turned = (((degrees + 180) % 360) + 360) % 360;
  return turned === 0 && degrees > 0 ? 180 : turned - 180;
}
