/** A place or a direction in metres; the room's corner is the origin, z points up. */
export interface Point {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** Distance between two places, m. */
export function distanceBetween(a: Point, b: Point): number {
  return Math.hypot(b.x - a.x, b.y - a.y, b.z - a.z);
}

/** Unit vector from one place towards another. Throws RangeError when they coincide. */
export function directionFrom(from: Point, to: Point): Point {
  const length = distanceBetween(from, to);
  if (!(length > 0)) throw new RangeError(`two places must differ, got distance ${length}`);
  return { x: (to.x - from.x) / length, y: (to.y - from.y) / length, z: (to.z - from.z) / length };
}
