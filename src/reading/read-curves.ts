import { powerToDb } from '../../dsp/level/decibels';
import type { ImpulseResponse } from '../../dsp/response/impulse-response';
import type { PowerSpectrum } from '../../dsp/response/power-spectrum';
import { logGrid, smoothPower } from '../../dsp/response/smoothing';
import type { RolloffFit } from '../../dsp/rolloff/fit-rolloff';
import type { ReadingCurves } from './reading';

const fraction = 24;
/** Plotted range and the range taken as 0 dB, Hz. */
const main = { range: [12, 20000], zero: [500, 2000], fitOn: [120, 500] } as const;
const sub = { range: [12, 480], zero: [40, 80], fitOn: [35, 85] } as const;

/**
 * Response in 1/24-octave power means with the noise under it, re its own 500 to 2000 Hz mean
 * level (subs 40 to 80 Hz), and the fitted roll-off laid on it by its mean distance from 120 to
 * 500 Hz (subs 35 to 85 Hz).
 */
export function readResponse(
  heard: PowerSpectrum,
  hiss: PowerSpectrum | null,
  fitted: RolloffFit['curve'] | null,
  isSub: boolean,
): Pick<ReadingCurves, 'response' | 'fit'> {
  const { range, zero } = isSub ? sub : main;
  const halfRate = (heard.power.length - 1) * heard.hzPerBin;
  const grid = logGrid(range[0], Math.min(range[1], 0.9 * halfRate), fraction);
  const db = smoothPower(heard, grid, fraction).map(powerToDb);
  const reference = meanBetween(grid, db, zero);
  const noiseDb = hiss
    ? smoothPower(hiss, grid, fraction).map(powerToDb)
    : new Float64Array(grid.length).fill(-200);
  const lowest = -120;
  const relative = (values: Float64Array): number[] => {
    const result: number[] = [];
    for (const value of values) result.push(Math.max(lowest, value - reference));
    return result;
  };
  const response = {
    hz: Array.from(grid),
    db: relative(db),
    noiseDb: relative(noiseDb),
  };
  return { response, fit: fitted && layFit(response, fitted, isSub) };
}

/** A fitted roll-off laid on a response by their mean distance, where both are flat. */
export function layFit(
  { hz, db }: Pick<ReadingCurves['response'], 'hz' | 'db'>,
  fitted: RolloffFit['curve'],
  isSub: boolean,
): NonNullable<ReadingCurves['fit']> {
  const { fitOn } = isSub ? sub : main;
  const level = meanBetween(hz, db, fitOn) - meanBetween(fitted.hz, fitted.medianDb, fitOn);
  const lay = (values: Float64Array): number[] => {
    const laid: number[] = [];
    for (const value of values) laid.push(value + level);
    return laid;
  };
  return {
    hz: Array.from(fitted.hz),
    db: lay(fitted.medianDb),
    low: lay(fitted.lowDb),
    high: lay(fitted.highDb),
  };
}

/**
 * Largest magnitude in steps of 0.05 ms from −3 to +20 ms around `originIndex`, re the largest of
 * all; what the arrival lanes draw.
 */
export function readEnvelope(ir: ImpulseResponse, originIndex: number): ReadingCurves['envelope'] {
  const stepSeconds = 0.05e-3;
  const startSeconds = -3e-3;
  const level: number[] = [];
  for (let step = 0; step < 460; step++) {
    const from = originIndex + (startSeconds + step * stepSeconds) * ir.sampleRate;
    let largest = 0;
    for (let n = Math.ceil(from); n < from + stepSeconds * ir.sampleRate; n++) {
      largest = Math.max(largest, Math.abs(ir.samples[n] ?? 0));
    }
    level.push(largest);
  }
  const top = Math.max(...level, Number.MIN_VALUE);
  return { startSeconds, stepSeconds, level: level.map((value) => value / top) };
}

function meanBetween(
  hz: ArrayLike<number>,
  db: ArrayLike<number>,
  [lowHz, highHz]: readonly [number, number],
): number {
  let sum = 0;
  let count = 0;
  for (let k = 0; k < hz.length; k++) {
    const f = hz[k] ?? 0;
    if (f < lowHz || f > highHz) continue;
    sum += db[k] ?? 0;
    count++;
  }
  return count === 0 ? 0 : sum / count;
}
