import { runNoise, type NoiseOptions } from '../../../src/noise/run-noise';
import type { NoiseRequest, NoiseState } from '../../../src/noise/noise-state';
import type { Rig } from '../../../src/rig/port';

export const asked: NoiseRequest = {
  kind: 'noise',
  channel: 'FL',
  lowHz: 20,
  highHz: 20_000,
  gainDb: -20,
  bandsPerOctave: 3,
  averagingSeconds: 8,
};

/** Runs noise on a rig; `step` sees every state and ends the run by giving true. */
export async function runOn(
  rig: Rig,
  request: Partial<NoiseRequest>,
  step: (
    state: NoiseState,
    run: ReturnType<typeof runNoise> | null,
    states: readonly NoiseState[],
  ) => boolean,
  options: Partial<NoiseOptions> = {},
) {
  const abort = new AbortController();
  const states: NoiseState[] = [];
  let ids = 0;
  let run: ReturnType<typeof runNoise> | null = null;
  const started = runNoise(
    rig,
    { ...asked, ...request },
    {
      signal: abort.signal,
      positionId: 'seat',
      newId: () => `reading ${ids++}`,
      now: () => '2030-01-02T03:04:05.000Z',
      isSub: false,
      calibration: null,
      soundLevel: null,
      routes: {},
      onState: (state) => {
        states.push(state);
        if (step(state, run, states)) abort.abort();
      },
      ...options,
    },
  );
  run = started;
  const end = await started.finished;
  return { end, states, last: states.at(-1), reading: started.reading() };
}
