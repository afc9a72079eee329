import type { BenchState } from '../../src/session/bench';

/** Whether nothing runs that loading the page again would cut off. */
export function isAtRest({ activity, sessions, saved }: BenchState): boolean {
  return activity.kind === 'idle' && sessions.file === null && saved !== 'saving';
}

/** Whether the page can be loaded again without losing anything: at rest, and all of it stored. */
export function mayReload(state: BenchState): boolean {
  return isAtRest(state) && state.saved !== 'failed';
}
