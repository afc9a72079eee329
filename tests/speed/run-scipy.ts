import { spawnSync } from 'node:child_process';
import type { Seconds } from './steps';

export interface ScipyResult {
  readonly runs: readonly Seconds[];
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

/**
 * Reads the take in `folder` with `script`, so many times on so many cores: on one, steps and total
 * are seconds of a core, on more the total is seconds by the clock. Null where SciPy is not
 * installed.
 */
export function runScipy(
  script: string,
  folder: string,
  runs: number,
  cores: number,
): ScipyResult | null {
  const python = ['python3', '/usr/bin/python3'].find(
    (name) => spawnSync(name, ['-c', 'import scipy.signal']).status === 0,
  );
  if (python === undefined) return null;
  const run = spawnSync(python, [script, folder, String(runs), String(cores)], {
    encoding: 'utf8',
    maxBuffer: 2 ** 26,
  });
  if (run.status !== 0) throw new Error(run.stderr);
  return JSON.parse(run.stdout) as ScipyResult;
}
