import { withUnit } from './number-text';
import { measures, type MeasureName } from './measure';
import { decimalMark } from './decimal-mark';

/** A field that a number is typed in; its limits are in SI units. */
export interface EntryRange {
  readonly label: string;
  readonly unit: string;
  readonly min: number;
  readonly max: number;
  readonly measure?: MeasureName;
}

/** Reads what was typed, in SI units; a string answer says what is wrong with it. */
export function readEntry(text: string, range: EntryRange): number | string {
  const { label, min, max } = range;
  const measure = measures[range.measure ?? 'number'];
  const typed = text.trim();
  const value = measure.read(typed);
  const stays = `${label.toLowerCase()} stays as it was.`;
  if (value === 'two readings') {
    return `“${typed}” could be read in two ways: type one decimal mark, such as 1${decimalMark()}5, and nothing between thousands; ${stays}`;
  }
  if (value === 'no number' || !Number.isFinite(value)) {
    return `“${typed}” is not ${nouns[range.measure ?? 'number']}; ${stays}`;
  }
  if (value < min || value > max) return `${label} ${sayRange(range)}; it stays as it was.`;
  return value;
}

const nouns: Readonly<Record<MeasureName, string>> = {
  number: 'a number',
  length: 'a length',
  temperature: 'a temperature',
};

/** "lies between 0.3 and 20 m"; one limit alone is said alone. */
function sayRange({ unit, min, max, measure = 'number' }: EntryRange): string {
  const { limit, limitUnit } = measures[measure];
  const least = limit(min, 'least');
  const most = limit(max, 'most');
  const own = limitUnit(unit);
  if (max === Infinity) return `is at least ${withUnit(least, own)}`;
  if (min === -Infinity) return `is at most ${withUnit(most, own)}`;
  return `lies between ${least} and ${withUnit(most, own)}`;
}
