import type { NoiseRequest } from '../../noise/noise-state';
import type { BenchRoom } from './bench-room';
import { withRuns } from './late-runs';
import { noReadingYet } from './no-reading-yet';
import type { NoiseRun } from './noise-run';

/** Live noise whose arithmetic is loaded when the first of it starts. */
export function lateNoise(room: BenchRoom): NoiseRun {
  let run: NoiseRun | null = null;
  /** What the noise that is on its way starts with; null when none is. */
  let first: NoiseRequest | null = null;
  return {
    start(request, signal) {
      if (run) return run.start(request, signal);
      first = request;
      return withRuns(({ createNoiseRun }) => {
        run ??= createNoiseRun(room);
        return run.start(first ?? request, signal);
      }).finally(() => (first = null));
    },
    change(request) {
      if (run) run.change(request);
      else if (first) first = request;
    },
    keep() {
      if (run) run.keep();
      else room.desk.raise(noReadingYet());
    },
  };
}
