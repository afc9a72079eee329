import { checkOneAxis, checkPowers, levelOverNoise, type DbCurve, type PowerCurve } from './curve';
import { logMean } from './log-mean';

/**
 * Mean of the powers of several responses, each without its noise, in dB; null where the noise is
 * half of the mean or more. Throws RangeError for no curve at all, frequencies that differ, and what
 * levelCurve refuses.
 */
export function averageByPower(curves: readonly PowerCurve[]): DbCurve {
  checkCurves(curves);
  const hz = curves[0]?.hz ?? [];
  const mean = (of: (curve: PowerCurve) => number | undefined): number =>
    curves.reduce((sum, curve) => sum + (of(curve) ?? 0), 0) / curves.length;
  const db = Array.from(hz, (_, k) =>
    levelOverNoise(
      mean(({ power }) => power[k]),
      mean(({ noisePower }) => noisePower?.[k]),
    ),
  );
  return { hz, db };
}

/**
 * Mean of the decibels of several responses, so that a notch at one seat counts as much as a peak;
 * null where one of them is null. Throws RangeError for no curve and frequencies that differ.
 */
export function averageByDb(curves: readonly DbCurve[]): DbCurve {
  checkOneAxis(curves);
  const hz = curves[0]?.hz ?? [];
  const db = Array.from(hz, (_, k) => {
    const values = toldBy(curves, k);
    return values && values.reduce((sum, value) => sum + value, 0) / values.length;
  });
  return { hz, db };
}

/**
 * Power mean of a group, each response first set to 0 dB by its own mean power (without noise, over
 * log frequency) from lowHz to highHz, so that near and far ones count alike. Throws RangeError as
 * averageByPower does, and when a response has no power over its noise in the reference band.
 */
export function averageGroup(
  curves: readonly PowerCurve[],
  reference: readonly [lowHz: number, highHz: number],
): DbCurve {
  checkCurves(curves);
  return averageByPower(curves.map((curve) => normalise(curve, reference)));
}

/** How curves spread at every frequency, dB; null where one of them is null. */
export interface CurveSpread {
  readonly hz: ArrayLike<number>;
  readonly lowest: readonly (number | null)[];
  readonly highest: readonly (number | null)[];
  /** Standard deviation with n − 1; null of a single curve. */
  readonly deviation: readonly (number | null)[];
}

/** Spread of several responses, such as over seats. Throws RangeError as averageByDb does. */
export function spreadOf(curves: readonly DbCurve[]): CurveSpread {
  checkOneAxis(curves);
  const hz = curves[0]?.hz ?? [];
  const over = (of: (values: readonly number[]) => number | null): (number | null)[] =>
    Array.from(hz, (_, k) => {
      const values = toldBy(curves, k);
      return values && of(values);
    });
  return {
    hz,
    lowest: over((values) => Math.min(...values)),
    highest: over((values) => Math.max(...values)),
    deviation: over(deviationOf),
  };
}

function deviationOf(values: readonly number[]): number | null {
  if (values.length < 2) return null;
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return Math.sqrt(squares / (values.length - 1));
}

/** What all curves say at one frequency; null when one of them cannot tell. */
function toldBy(curves: readonly DbCurve[], k: number): number[] | null {
  const values = curves.flatMap(({ db }) => db[k] ?? []);
  return values.length === curves.length ? values : null;
}

function normalise(curve: PowerCurve, [lowHz, highHz]: readonly [number, number]): PowerCurve {
  const { hz, power, noisePower } = curve;
  const own = Array.from(power, (value, k) => value - (noisePower?.[k] ?? 0));
  const mean = logMean(hz, own, lowHz, highHz);
  if (mean === null || !(mean > 0)) {
    throw new RangeError(`no power over the noise from ${lowHz} to ${highHz} Hz, got ${mean}`);
  }
  const scale = (values: ArrayLike<number>): number[] => Array.from(values, (one) => one / mean);
  return { hz, power: scale(power), noisePower: noisePower && scale(noisePower) };
}

function checkCurves(curves: readonly PowerCurve[]): void {
  checkOneAxis(curves);
  for (const curve of curves) checkPowers(curve);
}
