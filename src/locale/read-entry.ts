import { msg, str } from '@lit/localize';
import { withUnit } from './number-text';
import { measures, type MeasureName } from './measure';
import { decimalMark } from './decimal-mark';
import { withinSentence } from './within-sentence';

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
  const { label, min, max, measure = 'number' } = range;
  const typed = text.trim();
  const value = measures[measure].read(typed);
  const name = withinSentence(label);
  if (typed === '') return sayNothing(range, name);
  if (value === 'two readings') {
    return msg(
      str`“${typed}” could be read in two ways: type one decimal mark, such as 1${decimalMark()}5, and nothing between thousands; ${name} stays as it was.`,
    );
  }
  if (value === 'no number' || !Number.isFinite(value)) return sayNone(typed, measure, name);
  if (value < min || value > max) return sayBeyond(range);
  return value;
}

/** What an empty field asks for: what it may hold, with an example or both limits. */
function sayNothing({ unit, min, max, measure = 'number' }: EntryRange, name: string): string {
  const { show, limit, limitUnit } = measures[measure];
  if (Number.isFinite(min) && Number.isFinite(max)) {
    const most = withUnit(limit(max, 'most'), limitUnit(unit));
    return msg(
      str`Nothing was typed: type a number from ${limit(min, 'least')} to ${most}; ${name} stays as it was.`,
    );
  }
  if (measure === 'length') {
    return msg(
      str`Nothing was typed: type a length, such as ${show(2.4, 1)}; ${name} stays as it was.`,
    );
  }
  if (measure === 'temperature') {
    return msg(
      str`Nothing was typed: type a temperature, such as ${show(20, 0)}; ${name} stays as it was.`,
    );
  }
  return msg(str`Nothing was typed: type a number; ${name} stays as it was.`);
}

function sayNone(typed: string, measure: MeasureName, name: string): string {
  if (measure === 'length') return msg(str`“${typed}” is not a length; ${name} stays as it was.`);
  if (measure === 'temperature') {
    return msg(str`“${typed}” is not a temperature; ${name} stays as it was.`);
  }
  return msg(str`“${typed}” is not a number; ${name} stays as it was.`);
}

/** "Distance lies between 0.3 and 20 m"; one limit alone is said alone. */
function sayBeyond({ label, unit, min, max, measure = 'number' }: EntryRange): string {
  const { limit, limitUnit } = measures[measure];
  const own = limitUnit(unit);
  const least = limit(min, 'least');
  const most = withUnit(limit(max, 'most'), own);
  if (max === Infinity) {
    return msg(str`${label} is at least ${withUnit(least, own)}; it stays as it was.`);
  }
  if (min === -Infinity) return msg(str`${label} is at most ${most}; it stays as it was.`);
  return msg(str`${label} lies between ${least} and ${most}; it stays as it was.`);
}
