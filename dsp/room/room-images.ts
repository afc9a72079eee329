import { axisImages, type AxisImages } from './axis-images';
import type { Point } from './point';
import type { Room } from './room';

/** Image sources of a shoebox, as one list per axis; the images are all combinations. */
export interface RoomImages {
  readonly x: AxisImages;
  readonly y: AxisImages;
  readonly z: AxisImages;
}

/** Images of a source within `reach` metres of the microphone along each axis. */
export function roomImages(
  room: Room,
  source: Point,
  microphone: Point,
  reach: number,
): RoomImages {
  const { size, absorption } = room;
  const wall = (index: number): readonly number[] => absorption[index] ?? [];
  return {
    x: axisImages(size.x, source.x, microphone.x, [wall(0), wall(1)], reach),
    y: axisImages(size.y, source.y, microphone.y, [wall(2), wall(3)], reach),
    z: axisImages(size.z, source.z, microphone.z, [wall(4), wall(5)], reach),
  };
}

/** Throws RangeError unless the place lies inside the room. */
export function requireInside(room: Room, name: string, { x, y, z }: Point): void {
  const { size } = room;
  const inside = x >= 0 && y >= 0 && z >= 0 && x <= size.x && y <= size.y && z <= size.z;
  if (!inside) throw new RangeError(`${name} must lie inside the room, got (${x}, ${y}, ${z})`);
}
