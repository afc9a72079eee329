import { withLocale } from '../locale/with-locale';
import { helperInWorker } from './helper-in-worker';
import type { ReadingHelper } from './read-together';

/** More gain little: the take's clock is found by one thread. */
const mostHelpers = 3;

/** Helpers for all cores but this thread's, in workers that end with this one. */
export function helpersInWorkers(): ReadingHelper[] {
  const cores = navigator.hardwareConcurrency;
  const count = Number.isFinite(cores) ? Math.min(mostHelpers, Math.max(0, cores - 1)) : 0;
  return Array.from({ length: count }, () =>
    helperInWorker(
      withLocale(new Worker(new URL('./helper-worker.ts', import.meta.url), { type: 'module' })),
    ),
  );
}
