import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

export interface StageSeconds {
  readonly clock: number;
  readonly responses: number;
  readonly channels: number;
  readonly total: number;
}

export interface ScipyResult {
  readonly runs: readonly StageSeconds[];
  readonly reading: {
    readonly skewPpm: number;
    readonly channels: readonly {
      readonly channel: string;
      readonly arrivalSamples: number;
      readonly levelDb: number;
      readonly f6Hz: number;
    }[];
  };
}

/** Reads the take in `folder` with read_take.py, so many times; null where SciPy is not installed. */
export function runScipy(folder: string, runs: number): ScipyResult | null {
  const python = ['python3', '/usr/bin/python3'].find(
    (name) => spawnSync(name, ['-c', 'import scipy.signal']).status === 0,
  );
  if (python === undefined) return null;
  const script = fileURLToPath(new URL('./read_take.py', import.meta.url));
  const run = spawnSync(python, [script, folder, String(runs)], {
    encoding: 'utf8',
    maxBuffer: 2 ** 26,
  });
  if (run.status !== 0) throw new Error(run.stderr);
  return JSON.parse(run.stdout) as ScipyResult;
}
