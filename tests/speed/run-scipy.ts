import { spawnSync } from 'node:child_process';
import type { Seconds } from './steps';

export interface ScipyResult {
  readonly runs: readonly Seconds[];
  readonly reading: {
    readonly skewPpm: number;
    readonly skewHalfPpm: number;
    /** How much later the reference speaker arrives by the take's marks than by its sweep. */
    readonly marksAfterSweepSeconds: number;
    /** Segments whose gain is not the reference's. */
    readonly faults: number;
    readonly channels: readonly {
      readonly channel: string;
      readonly arrivalSamples: number;
      /** Half the 90 % interval of that. */
      readonly halfSamples: number;
      /** Of a height heard over the ceiling. */
      readonly ceilingSamples: number | null;
      readonly levelDb: number;
      /** From the ends of its 90 % interval. */
      readonly levelHalves: readonly [number, number];
      readonly f6Hz: number;
      /** How far each sound beside the sweep may move the response. */
      readonly errorsDb: readonly number[];
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
