import type { FilterSpec } from '../filter/analogue';
import { dbToPower } from '../level/decibels';
import { logGrid } from '../response/smoothing';
import { filterPower } from './filter-power';
import { checkGrid } from './transfer';

const grid = logGrid(20, 300, 24);

/** Frequencies of the bass ledger: 20 to 300 Hz, 24 to the octave. */
export function ledgerGrid(): Float64Array {
  return grid.slice();
}

/** Power over the ledger's grid re a flat target. */
export type LedgerCurve = Float64Array;

/**
 * Power of a level in dB given at rising frequencies, straight in dB over log f between them and
 * level beyond their ends: a fitted roll-off. Throws RangeError for lengths that differ.
 */
export function curveOfLevels(hz: Float64Array, db: Float64Array): LedgerCurve {
  checkGrid(hz);
  if (db.length !== hz.length) throw new RangeError(`db must be ${hz.length}, got ${db.length}`);
  let at = 0;
  return grid.map((f) => {
    while (at + 2 < hz.length && (hz[at + 1] ?? f) < f) at++;
    const [low, high] = [hz[at] ?? 1, hz[at + 1] ?? 1];
    const along = Math.min(1, Math.max(0, Math.log(f / low) / Math.log(high / low)));
    return dbToPower((db[at] ?? 0) * (1 - along) + (db[at + 1] ?? 0) * along);
  });
}

const known = new Map<string, LedgerCurve>();
const mostKnown = 500;

/** Power of a filter on the ledger's grid, computed once; not to be changed. */
export function curveOfFilter(spec: FilterSpec): LedgerCurve {
  const key = `${spec.family} ${spec.kind} ${spec.order} ${spec.cutoffHz}`;
  const before = known.get(key);
  if (before) return before;
  const curve = grid.map((hz) => filterPower(spec, hz));
  if (known.size >= mostKnown) known.clear();
  known.set(key, curve);
  return curve;
}
