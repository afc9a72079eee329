import { distanceBetween, type Point } from './point';
import type { Room } from './room';

/**
 * Place seen from the listener (who faces +y) at an azimuth (positive to the left) and elevation
 * in degrees and a distance in metres, pulled inside the room by `margin` along the line of sight.
 */
export function placeAround(
  room: Room,
  listener: Point,
  azimuthDegrees: number,
  elevationDegrees: number,
  distanceMetres: number,
  margin = 0.2,
): Point {
  const azimuth = (azimuthDegrees * Math.PI) / 180;
  const elevation = (elevationDegrees * Math.PI) / 180;
  const direction = {
    x: -Math.cos(elevation) * Math.sin(azimuth),
    y: Math.cos(elevation) * Math.cos(azimuth),
    z: Math.sin(elevation),
  };
  const reach = (at: number, step: number, size: number): number =>
    Math.abs(step) < 1e-9 ? Infinity : ((step > 0 ? size - margin : margin) - at) / step;
  const distance = Math.max(
    Math.min(
      distanceMetres,
      reach(listener.x, direction.x, room.size.x),
      reach(listener.y, direction.y, room.size.y),
      reach(listener.z, direction.z, room.size.z),
    ),
    0.1,
  );
  return {
    x: listener.x + distance * direction.x,
    y: listener.y + distance * direction.y,
    z: listener.z + distance * direction.z,
  };
}

/** Length of the way from a source over the ceiling to the microphone, m. */
export function ceilingPath(room: Room, source: Point, microphone: Point): number {
  return distanceBetween({ ...source, z: 2 * room.size.z - source.z }, microphone);
}

/** Where on the ceiling that way is reflected: what a bounced speaker aims at. */
export function ceilingPoint(room: Room, source: Point, microphone: Point): Point {
  const up = room.size.z - source.z;
  const down = room.size.z - microphone.z;
  const share = up / (up + down);
  return {
    x: source.x + share * (microphone.x - source.x),
    y: source.y + share * (microphone.y - source.y),
    z: room.size.z,
  };
}
