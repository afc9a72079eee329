import type { ProofFigure, Verdict } from './proof';

/** Pass when the whole interval is allowed, fail when none of it is, else cannot tell. */
export function judgeInterval({
  interval,
  allowed,
}: Pick<ProofFigure, 'interval' | 'allowed'>): Verdict {
  const [low, high] = interval;
  if (low >= allowed[0] && high <= allowed[1]) return 'pass';
  return high < allowed[0] || low > allowed[1] ? 'fail' : 'cannot tell';
}

/** A figure that may lie so far to either side of 0. */
export function figureAround(
  value: number,
  half: number,
  allowed: number,
  unit: ProofFigure['unit'],
): ProofFigure {
  return { value, interval: [value - half, value + half], allowed: [-allowed, allowed], unit };
}
