import { late, withLate } from '../../late';
import type { Trouble } from '../../trouble';

/** All that a bench runs. */
export type Runs = typeof import('./runs');

/** What the bench runs, loaded before the first of it. */
export const lateRuns = late<Runs>(() => import('./runs'));

/** Does something with what runs: at once where that is there, else as soon as it is. */
export function withRuns<Result>(work: (runs: Runs) => Promise<Result>): Promise<Result | Trouble> {
  return withLate(lateRuns, work);
}
