import type { HarmonicCurve, HarmonicReading } from './harmonic-reading';
import { fraction } from './band-energy';
import { sumHarmonics } from './sum-harmonics';

/**
 * The reading with each harmonic re the level the fundamental has at the harmonic's own frequency,
 * not at its fundamental's: without room and roll-off, as an analyser on the drive would see it.
 * Null where the linear response does not reach that frequency.
 */
export function atSameFrequency(reading: HarmonicReading): HarmonicReading {
  const { fundamentalDb, hz } = reading;
  const harmonics = reading.harmonics.map((harmonic) => {
    const shift = fraction * Math.log2(harmonic.order);
    const moves = hz.map((_, i) => {
      const own = valueAt(fundamentalDb, i + shift);
      return own === null ? null : (fundamentalDb[i] ?? 0) - own;
    });
    return { order: harmonic.order, ...moved(harmonic, moves) };
  });
  return { ...reading, harmonics, total: sumHarmonics(harmonics) };
}

function moved(curve: HarmonicCurve, moves: readonly (number | null)[]): HarmonicCurve {
  const move = (values: readonly (number | null)[]): (number | null)[] =>
    values.map((value, i) => {
      const by = moves[i] ?? null;
      return value === null || by === null ? null : value + by;
    });
  return {
    db: move(curve.db),
    floorDb: move(curve.floorDb),
    limitedBy: curve.limitedBy.map((limit, i) => (moves[i] === null ? 'band' : limit)),
  };
}

/** Between two points, or null beyond the last. */
function valueAt(values: readonly number[], position: number): number | null {
  const low = Math.floor(position + 1e-9);
  const part = Math.max(position - low, 0);
  const start = values[low];
  if (start === undefined) return null;
  if (part < 1e-6) return start;
  const end = values[low + 1];
  return end === undefined ? null : start + part * (end - start);
}
