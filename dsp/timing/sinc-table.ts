/** Kernel of a band-limited interpolator, tabulated by the fraction of a sample. */
export interface SincTable {
  /** Rows × taps; row r is for the fraction r / (rows − 1); tap k stands at k − reach + 1. */
  readonly values: Float64Array;
  /** Intervals between the rows. */
  readonly phases: number;
  /** Taps on each side. */
  readonly reach: number;
}

/** Zero crossings on each side, Kaiser's β (stop band below −120 dB), rows for cutoff 1. */
const crossings = 48;
const beta = 12.27;
const finestPhases = 1024;

const tables = new Map<number, SincTable>();
const keptTables = 4;

/**
 * Kaiser-windowed sinc for reading a signal between its samples. `cutoff` is the upper edge over
 * half the input rate, above 0 up to 1; below 1 it keeps the signal from folding at a lower rate.
 * Flat within −120 dB up to 0.92 of the edge. Throws RangeError. Source: Kaiser, 1974; Smith and
 * Gossett, ICASSP 1984 (interpolated table).
 */
export function sincTable(cutoff: number): SincTable {
  if (!(cutoff > 0 && cutoff <= 1)) {
    throw new RangeError(`cutoff must lie above 0 up to 1, got ${cutoff}`);
  }
  const known = tables.get(cutoff);
  if (known) return known;
  const reach = Math.ceil(crossings / cutoff);
  const phases = Math.max(64, Math.round(finestPhases * cutoff));
  const values = new Float64Array((phases + 1) * 2 * reach);
  const peak = bessel(beta);
  for (let row = 0; row <= phases; row++) {
    for (let tap = 0; tap < 2 * reach; tap++) {
      const x = (tap - reach + 1 - row / phases) * cutoff;
      const inside = Math.max(0, 1 - (x / crossings) ** 2);
      const sinc = x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
      values[row * 2 * reach + tap] = (cutoff * sinc * bessel(beta * Math.sqrt(inside))) / peak;
    }
  }
  const table = { values, phases, reach };
  for (const oldest of tables.keys()) {
    if (tables.size < keptTables) break;
    tables.delete(oldest);
  }
  tables.set(cutoff, table);
  return table;
}

/** Modified Bessel function of the first kind, order 0, by its series. */
function bessel(x: number): number {
  let term = 1;
  let sum = 1;
  for (let k = 1; term > 1e-17 * sum; k++) {
    term *= (x / (2 * k)) ** 2;
    sum += term;
  }
  return sum;
}
