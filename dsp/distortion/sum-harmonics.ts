import { dbToPower, powerToDb } from '../level/decibels';
import type { Harmonic, HarmonicCurve, HarmonicLimit } from './harmonic-reading';

/**
 * Total harmonic distortion, the power sum of the harmonics that are told. What may hide under the
 * floors of the others must stay below it. Orders beyond the sweep's end are not in it; the second
 * and third must be within. Throws RangeError when nothing is given.
 */
export function sumHarmonics(harmonics: readonly Harmonic[]): HarmonicCurve {
  const [first] = harmonics;
  if (!first) throw new RangeError('a total needs harmonics, got 0');
  const points: ReturnType<typeof sumAt>[] = [];
  for (let i = 0; i < first.db.length; i++) points.push(sumAt(harmonics, i));
  return {
    db: points.map(({ db }) => db),
    floorDb: points.map(({ floorDb }) => floorDb),
    limitedBy: points.map(({ limitedBy }) => limitedBy),
  };
}

function sumAt(harmonics: readonly Harmonic[], i: number) {
  let told = 0;
  let hidden = 0;
  let floors = 0;
  let unknown = false;
  let worst: { readonly limit: HarmonicLimit; readonly power: number } | null = null;
  for (const { order, db, floorDb, limitedBy } of harmonics) {
    const limit = limitedBy[i] ?? null;
    const floor = floorDb[i] ?? null;
    if (limit === 'band') {
      if (order <= 3) return { db: null, floorDb: null, limitedBy: 'band' as const };
      continue;
    }
    if (floor === null) unknown = true;
    const power = floor === null ? 0 : dbToPower(floor);
    floors += power;
    const level = db[i] ?? null;
    if (level !== null) told += dbToPower(level);
    if (limit === null) continue;
    hidden += power;
    if (power >= (worst?.power ?? 0)) worst = { limit, power };
  }
  const limit = worst?.limit ?? 'noise';
  if (unknown) return { db: null, floorDb: null, limitedBy: limit };
  if (told > 0 && hidden < told) {
    return { db: powerToDb(told), floorDb: powerToDb(floors), limitedBy: null };
  }
  return { db: null, floorDb: powerToDb(told + hidden), limitedBy: limit };
}
