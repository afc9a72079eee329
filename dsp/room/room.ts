import type { Point } from './point';

/**
 * A shoebox from the origin to `size`, metres. absorption[wall][band] is the energy absorbed per
 * reflection, 0 … 1, for the walls x = 0, x = size.x, y = 0, y = size.y, floor, ceiling and the
 * bands of bandHz.
 */
export interface Room {
  readonly size: Point;
  readonly celsius: number;
  readonly absorption: readonly (readonly number[])[];
  /** Seed of the diffuse tail. */
  readonly seed: number;
}

/** Volume of the room, m³. */
export function roomVolume({ size }: Room): number {
  return size.x * size.y * size.z;
}

/** Speed of sound in the room, m/s: 343.2·√(T/293.15 K). Source: ISO 9613-1. */
export function soundSpeed({ celsius }: Room): number {
  return 343.2 * Math.sqrt((celsius + 273.15) / 293.15);
}
