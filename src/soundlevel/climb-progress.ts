import { mostStepDb } from './climb-limits';
import type { ClimbState } from './sound-level';

/** Where a climb stands. */
export interface ClimbPosition {
  readonly gainDb: number;
  readonly startDb: number;
  readonly capDb: number;
  readonly marginDb: number | null;
  readonly wantedMarginDb: number;
  /** Seconds since the check of linearity began; null before. */
  readonly checkedSeconds: number | null;
}

/** What the check takes, and what a step takes, about. */
const checkSeconds = 8;
const stepSeconds = 2.2;
/** Parts of the progress: up to the end of the silence, and up to the check. */
const silencePart = 0.1;
const climbPart = 0.8;

/** Progress and seconds left, as far as can be foretold: the goal once something is heard, else the cap. */
export function climbProgress(at: ClimbPosition): Pick<ClimbState, 'progress' | 'secondsLeft'> {
  const { gainDb, startDb, capDb, marginDb, checkedSeconds } = at;
  if (checkedSeconds !== null) {
    const part = Math.min(checkedSeconds / checkSeconds, 1);
    return {
      progress: climbPart + (1 - climbPart) * part,
      secondsLeft: Math.max(checkSeconds - checkedSeconds, 0.5),
    };
  }
  const left = marginDb === null ? Infinity : Math.max(at.wantedMarginDb - marginDb, 0);
  const goalDb = Math.max(Math.min(gainDb + left, capDb), startDb + 1);
  const part = Math.min(Math.max((gainDb - startDb) / (goalDb - startDb), 0), 1);
  return {
    progress: silencePart + (climbPart - silencePart) * part,
    secondsLeft: secondsToGo(gainDb, goalDb),
  };
}

/** Rough seconds a climb from one gain to another takes, its check included. */
export function secondsToGo(fromDb: number, toDb: number): number {
  return stepSeconds * Math.ceil(Math.max(toDb - fromDb, 0) / mostStepDb) + checkSeconds;
}
