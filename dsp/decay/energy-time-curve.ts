import { powerToDb } from '../level/decibels';
import type { ImpulseResponse } from '../response/impulse-response';
import { analyticBand } from '../timing/analytic-band';
import { checkedArrival } from './checked-arrival';

export interface EnergyTimeOptions {
  /** When the sound arrives, s after zero delay; left out: the largest sample. */
  readonly arrivalSeconds?: number;
  /** The band looked at, Hz; left out: 20 Hz to half the sample rate. */
  readonly bandHz?: readonly [number, number];
  /** Seconds re the arrival between which the curve is told; left out: the whole response. */
  readonly fromSeconds?: number;
  readonly toSeconds?: number;
  /** At most so many points, at least 1; default 2000. */
  readonly mostPoints?: number;
}

/** Energy along time; entry n of one belongs to entry n of the other. */
export interface EnergyTimeCurve {
  /** Seconds after the arrival, rising: where the largest value of each cell stands. */
  readonly seconds: Float64Array;
  /** That value, dB re the largest of the curve. */
  readonly db: Float64Array;
  /** Width of a cell, s. */
  readonly cellSeconds: number;
}

const lowestHz = 20;

/**
 * Energy-time curve: squared magnitude of the analytic signal of a band (zero phase, skirts as
 * analyticBand), dB re its largest. Long stretches are told in cells of one length, each by its
 * largest value at that value's own time. Empty for a silent response. Throws RangeError for a
 * band as analyticBand, an empty stretch of time, or fewer than 1 point. Common practice.
 */
export function energyTimeCurve(
  ir: ImpulseResponse,
  options: EnergyTimeOptions = {},
): EnergyTimeCurve {
  const { samples, sampleRate, zeroIndex } = ir;
  const { bandHz = [lowestHz, sampleRate / 2], mostPoints = 2000 } = options;
  const origin = zeroIndex + checkedArrival(ir, options.arrivalSeconds) * sampleRate;
  const place = (seconds: number): number => Math.round(origin + seconds * sampleRate);
  const from = Math.max(0, place(options.fromSeconds ?? -Infinity));
  const to = Math.min(samples.length, place(options.toSeconds ?? Infinity));
  if (!(to > from)) throw new RangeError(`no samples lie between ${from} and ${to}`);
  if (!(mostPoints >= 1)) throw new RangeError(`mostPoints must be 1 or more, got ${mostPoints}`);
  const analytic = analyticBand(
    samples,
    sampleRate,
    bandHz[0],
    Math.min(bandHz[1], sampleRate / 2),
  );
  const cell = Math.ceil((to - from) / Math.floor(mostPoints));
  const seconds: number[] = [];
  const powers: number[] = [];
  for (let start = from; start < to; start += cell) {
    let best = start;
    let most = 0;
    for (let n = start; n < Math.min(start + cell, to); n++) {
      const power = (analytic[2 * n] ?? 0) ** 2 + (analytic[2 * n + 1] ?? 0) ** 2;
      if (power > most) [best, most] = [n, power];
    }
    seconds.push((best - origin) / sampleRate);
    powers.push(most);
  }
  const largest = powers.reduce((most, power) => Math.max(most, power), 0);
  const silent = !(largest > 0);
  return {
    seconds: Float64Array.from(silent ? [] : seconds),
    db: Float64Array.from(silent ? [] : powers, (power) => powerToDb(power / largest)),
    cellSeconds: cell / sampleRate,
  };
}
