import { powerToDb } from '../level/decibels';
import type { DbCurve } from './curve';
import { logInterpolate } from './log-points';
import { logMean } from './log-mean';

/** A curve that a response is wanted to follow; its parts add up. Flat with none of them. */
export interface Target {
  /** Points of rising frequency; null: 0 dB everywhere. */
  readonly points: { readonly hz: readonly number[]; readonly db: readonly number[] } | null;
  /** Slope, dB an octave, 0 dB at 1 kHz. */
  readonly tiltDbPerOctave: number;
  /** More or less bass: `db` far below `hz`, half of it there, nothing far above; null: none. */
  readonly bassShelf: { readonly hz: number; readonly db: number } | null;
}

const tiltHz = 1000;

/**
 * The target at `hz`, dB: its points, linear in log frequency between them and level outside, the
 * tilt d·log2(f/1 kHz), and the shelf. The shelf is the second-order low shelf of slope 1,
 * |H|² = A²·((A − x²)² + 2Ax²)/((1 − Ax²)² + 2Ax²), x = f/f₀, A = 10^(dB/40), so that an equaliser
 * can follow it. Throws RangeError for hz not above 0 and for parts that are no numbers or no
 * points. Source of the shelf: Audio EQ Cookbook, W3C Working Group Note (2021).
 */
export function targetDb(target: Target, hz: number): number {
  const { points, tiltDbPerOctave, bassShelf } = target;
  if (!(hz > 0 && hz < Infinity)) throw new RangeError(`hz must be positive, got ${hz}`);
  if (!Number.isFinite(tiltDbPerOctave)) {
    throw new RangeError(`tiltDbPerOctave must be finite, got ${tiltDbPerOctave}`);
  }
  if (points && (points.hz.length === 0 || points.hz.length !== points.db.length)) {
    throw new RangeError(`a target needs as many dB as frequencies, got ${points.db.length}`);
  }
  const drawn = points ? logInterpolate(points.hz, points.db, hz) : 0;
  const shelf = bassShelf ? shelfDb(bassShelf, hz) : 0;
  return drawn + tiltDbPerOctave * Math.log2(hz / tiltHz) + shelf;
}

function shelfDb({ hz, db }: { readonly hz: number; readonly db: number }, at: number): number {
  if (!(hz > 0 && hz < Infinity && Number.isFinite(db))) {
    throw new RangeError(`a bass shelf needs hz above 0 and finite dB, got ${hz} and ${db}`);
  }
  const gain = 10 ** (db / 40);
  const square = (at / hz) ** 2;
  const above = (gain - square) ** 2 + 2 * gain * square;
  const below = (1 - gain * square) ** 2 + 2 * gain * square;
  return powerToDb((gain * gain * above) / below);
}

/** The target at the frequencies of a curve. Throws RangeError as targetDb does. */
export function targetCurve(target: Target, hz: ArrayLike<number>): DbCurve {
  return { hz, db: Array.from(hz, (each) => targetDb(target, each)) };
}

/**
 * How far a curve stands over the target on the mean of a band, dB, over log frequency; null where
 * nothing in the band is told. Throws RangeError as targetDb and logMean do.
 */
export function offsetFromTarget(
  curve: DbCurve,
  target: Target,
  [lowHz, highHz]: readonly [number, number],
): number | null {
  return logMean(curve.hz, deviationFromTarget(curve, target, 0).db, lowHz, highHz);
}

/**
 * What a curve has over the target when the target is lifted by offsetDb, dB; null where the curve
 * is. Throws RangeError as targetDb does, and for an offset that is not finite.
 */
export function deviationFromTarget(curve: DbCurve, target: Target, offsetDb: number): DbCurve {
  if (!Number.isFinite(offsetDb)) throw new RangeError(`offsetDb must be finite, got ${offsetDb}`);
  const { hz } = curve;
  const db = curve.db.map((value, k) =>
    value === null ? null : value - targetDb(target, hz[k] ?? NaN) - offsetDb,
  );
  return { hz, db };
}
