import type { ChannelLabel } from '../../src/system/channel';
import type { DeclaredPlace } from '../../src/system/declared-system';
import { offsetOf, placeOf, wrapDegrees } from '../../src/system/speaker-offset';
import { standingOffset, type DeclaredPlan } from '../../src/system/standing-place';

export const angleStepDegrees = 1;
export const distanceStepMetres = 0.05;

/** A distance that is not known stays so until a drag leads farther in or out than this. */
const unknownWithinMetres = 0.15;

/** A point on the floor plan, metres from the listener. */
export interface PlanPoint {
  readonly rightMetres: number;
  readonly backMetres: number;
}

/**
 * Where a speaker stands that is dragged to a point: whole degrees, steps of 5 cm seen from above,
 * as high above the ears as it was.
 */
export function snapPlace(
  plan: DeclaredPlan,
  label: ChannelLabel,
  from: DeclaredPlace,
  { rightMetres, backMetres }: PlanPoint,
): DeclaredPlace {
  const start = standingOffset(plan, label, from);
  const target = placeOf({ rightMetres, backMetres, upMetres: 0 });
  const azimuthDegrees =
    Math.round(target.azimuthDegrees / angleStepDegrees) * angleStepDegrees + 0;
  const before = Math.hypot(start.rightMetres, start.backMetres);
  const isNear = Math.abs(target.distanceMetres - before) < unknownWithinMetres;
  if (from.distanceMetres === null && isNear) return { ...from, azimuthDegrees };
  const metres = Math.round(target.distanceMetres / distanceStepMetres) * distanceStepMetres;
  const level = offsetOf({ azimuthDegrees, elevationDegrees: 0, distanceMetres: metres });
  const { elevationDegrees, distanceMetres } = placeOf({ ...level, upMetres: start.upMetres });
  return {
    azimuthDegrees,
    elevationDegrees: Number(elevationDegrees.toFixed(1)),
    distanceMetres: Number(distanceMetres.toFixed(2)),
  };
}

/**
 * Where an arrow key moves a speaker: left and right turn it around the seat by a degree, up and
 * down move it away and closer by 5 cm; five times as far with Shift. Null for any other key.
 */
export function stepPlace(
  plan: DeclaredPlan,
  label: ChannelLabel,
  from: DeclaredPlace,
  { key, shiftKey }: { readonly key: string; readonly shiftKey: boolean },
): DeclaredPlace | null {
  const times = shiftKey ? 5 : 1;
  const turn = signOf(key, 'ArrowLeft', 'ArrowRight');
  if (turn !== 0) {
    const azimuth = Math.round(from.azimuthDegrees / angleStepDegrees) + turn * times;
    return { ...from, azimuthDegrees: wrapDegrees(azimuth * angleStepDegrees) };
  }
  const away = signOf(key, 'ArrowUp', 'ArrowDown');
  if (away === 0) return null;
  const { distanceMetres } = placeOf(standingOffset(plan, label, from));
  const known = { ...from, distanceMetres };
  const flat = placeOf({ ...standingOffset(plan, label, known), upMetres: 0 });
  const metres = flat.distanceMetres + away * times * distanceStepMetres;
  return {
    ...snapPlace(plan, label, known, offsetOf({ ...flat, distanceMetres: Math.max(0, metres) })),
    azimuthDegrees: from.azimuthDegrees,
  };
}

function signOf(key: string, plus: string, minus: string): number {
  if (key === plus) return 1;
  return key === minus ? -1 : 0;
}
