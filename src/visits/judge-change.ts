import type { VisitFigure, VisitVerdict } from './visits';

/** How finely a change is judged. */
export interface ChangeLimits {
  /** A change within this counts as none. */
  readonly allowed: number;
  /** With a wider interval to either side it cannot be told that nothing changed. */
  readonly coarsest: number;
}

/**
 * Changed when the whole interval lies beyond what is allowed; as it was when the value is within it
 * and known well enough; else it cannot be told.
 */
export function judgeChange(
  value: number,
  half: number,
  { allowed, coarsest }: ChangeLimits,
): VisitVerdict {
  const size = Math.abs(value);
  if (size - half > allowed) return 'changed';
  return size <= allowed && half <= coarsest ? 'as it was' : 'cannot tell';
}

/** A change with the half width of its interval, as a finding shows it. */
export function changeFigure(
  value: number,
  half: number,
  { allowed }: ChangeLimits,
  unit: VisitFigure['unit'],
): VisitFigure {
  return { value, interval: [value - half, value + half], allowed: [-allowed, allowed], unit };
}
