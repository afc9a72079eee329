import { csvText } from './csv-text';
import { fileName, type FileFacts } from './file-name';
import { writeNumber, type Digits } from './write-number';

/** What a curve runs over; values rise. */
export interface CurveAxis {
  readonly name: 'frequency' | 'time';
  readonly unit: 'Hz' | 's';
  readonly values: ArrayLike<number>;
}

/** A curve to be saved; as many values as its axis has. */
export interface SavedCurve {
  /** Heads its column together with the unit, such as "FL response". */
  readonly name: string;
  /** With its reference where it has one, such as "dB re 500–2000 Hz". */
  readonly unit: string;
  readonly axis: CurveAxis;
  /** Null where nothing can be told; its field stays empty. */
  readonly values: ArrayLike<number | null>;
  /** What is known of the values; 0.01 dB for levels. */
  readonly digits: Digits;
}

/** A file of text, UTF-8. */
export interface TextFile {
  readonly name: string;
  readonly text: string;
}

/** An axis is written with at least so many digits, and more where its steps need them. */
const leastDigits = 6;
const mostDigits = 15;
/** Rounding moves a value of the axis by at most this share of its step. */
const leastShare = 0.1;

/**
 * Curves as files of comma-separated values: a first column of frequency or time, then a column a
 * curve, units in the heading, nothing but numbers below it. Curves of one axis share a file; every
 * further axis gets a file of its own with a number behind its name, because a table with holes is
 * read wrongly by most programs. `what` stands in the names, such as "response". Throws RangeError
 * for no curve, for values that are not finite or do not fit the axis, and for an axis that does not
 * rise.
 */
export function curvesToCsv(
  curves: readonly SavedCurve[],
  facts: FileFacts,
  what: string,
): TextFile[] {
  if (curves.length === 0) throw new RangeError('at least one curve is needed, got 0');
  const tables: SavedCurve[][] = [];
  for (const curve of curves) {
    const table = tables.find(([first]) => first && isSameAxis(first.axis, curve.axis));
    if (table) table.push(curve);
    else tables.push([curve]);
  }
  return tables.map((table, n) => ({
    name: fileName(facts, n === 0 ? what : `${what} ${n + 1}`, 'csv'),
    text: tableText(table),
  }));
}

function tableText(table: readonly SavedCurve[]): string {
  const axis = table[0]?.axis ?? { name: 'frequency', unit: 'Hz', values: [] };
  const heading = [axis, ...table].map(({ name, unit }) => `${name} (${unit})`);
  for (const { name, values } of table) {
    if (values.length === axis.values.length) continue;
    throw new RangeError(`${name} needs ${axis.values.length} values, got ${values.length}`);
  }
  const significant = axisDigits(axis.values);
  const rows = Array.from(axis.values, (at, k) => [
    writeNumber(at, { significant }),
    ...table.map(({ values, digits }) => {
      const value = values[k] ?? null;
      return value === null ? '' : writeNumber(value, digits);
    }),
  ]);
  return csvText(heading, rows);
}

/** The fewest digits by which the entries of an axis can be told apart well. */
function axisDigits(values: ArrayLike<number>): number {
  for (let k = 1; k < values.length; k++) {
    if ((values[k] ?? NaN) > (values[k - 1] ?? NaN)) continue;
    throw new RangeError(`an axis must rise, got ${values[k]} after ${values[k - 1]}`);
  }
  for (let digits = leastDigits; digits < mostDigits; digits++) {
    if (isFineEnough(values, digits)) return digits;
  }
  return mostDigits;
}

function isFineEnough(values: ArrayLike<number>, digits: number): boolean {
  for (let k = 0; k < values.length; k++) {
    const at = values[k] ?? 0;
    const step = Math.min(at - (values[k - 1] ?? -Infinity), (values[k + 1] ?? Infinity) - at);
    if (Math.abs(Number(at.toPrecision(digits)) - at) > leastShare * step) return false;
  }
  return true;
}

function isSameAxis(a: CurveAxis, b: CurveAxis): boolean {
  if (a.name !== b.name || a.unit !== b.unit || a.values.length !== b.values.length) return false;
  for (let k = 0; k < a.values.length; k++) if (a.values[k] !== b.values[k]) return false;
  return true;
}
