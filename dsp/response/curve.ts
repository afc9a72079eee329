import { powerToDb } from '../level/decibels';

/** Power of a response over frequency, smoothed or not; arrays of one length, frequencies rise. */
export interface PowerCurve {
  readonly hz: ArrayLike<number>;
  readonly power: ArrayLike<number>;
  /** The noise in it, by the same smoothing; null where none is known. */
  readonly noisePower: ArrayLike<number> | null;
}

/** Decibels over frequency; null where nothing can be told for noise. */
export interface DbCurve {
  readonly hz: ArrayLike<number>;
  readonly db: readonly (number | null)[];
}

/**
 * The response alone in dB: the noise's power is taken off, and where the noise is half of the power
 * or more there is null. Throws RangeError when lengths differ, frequencies do not rise, or a power
 * is negative or no number.
 */
export function levelCurve(curve: PowerCurve): DbCurve {
  checkPowers(curve);
  const { hz, power, noisePower } = curve;
  const db = Array.from(power, (whole, k) => levelOverNoise(whole, noisePower?.[k] ?? 0));
  return { hz, db };
}

/** dB of a power without its noise; null when noise is half of it or more, or nothing is there. */
export function levelOverNoise(power: number, noisePower: number): number | null {
  const own = power - noisePower;
  return own > power / 2 ? powerToDb(own) : null;
}

/**
 * What the first curve has over the second, dB; null where either is in its noise. Throws
 * RangeError when they do not share their frequencies.
 */
export function differenceCurve(first: DbCurve, second: DbCurve): DbCurve {
  checkOneAxis([first, second]);
  const db = first.db.map((value, k) => {
    const other = second.db[k] ?? null;
    return value === null || other === null ? null : value - other;
  });
  return { hz: first.hz, db };
}

/** Throws RangeError unless all curves have the frequencies of the first, and there is one. */
export function checkOneAxis(curves: readonly { readonly hz: ArrayLike<number> }[]): void {
  const [first] = curves;
  if (!first) throw new RangeError('at least one curve is needed, got 0');
  for (const { hz } of curves) {
    if (hz.length !== first.hz.length) {
      throw new RangeError(`curves must share ${first.hz.length} frequencies, got ${hz.length}`);
    }
    for (let k = 0; k < hz.length; k++) {
      if (hz[k] === first.hz[k]) continue;
      throw new RangeError(`curves must share frequency ${k}, ${first.hz[k]} Hz, got ${hz[k]}`);
    }
  }
}

/** Throws RangeError as levelCurve does. */
export function checkPowers({ hz, power, noisePower }: PowerCurve): void {
  if (power.length !== hz.length || (noisePower && noisePower.length !== hz.length)) {
    throw new RangeError(`a curve needs ${hz.length} powers, got ${power.length}`);
  }
  for (let k = 0; k < hz.length; k++) {
    if (!((hz[k] ?? NaN) > (k > 0 ? (hz[k - 1] ?? NaN) : -1))) {
      throw new RangeError(`frequencies must rise, got ${hz[k]} Hz at ${k}`);
    }
    const [own, noise] = [power[k] ?? NaN, noisePower ? (noisePower[k] ?? NaN) : 0];
    if (!(own >= 0 && own < Infinity && noise >= 0 && noise < Infinity)) {
      throw new RangeError(`powers must not be negative, got ${own} and ${noise} at ${hz[k]} Hz`);
    }
  }
}
