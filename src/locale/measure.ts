import { withMark } from './decimal-mark';
import { isImperial, lengthUnit, metresPerFoot, metresPerInch } from './length-text';
import { numberText, trimmedText } from './number-text';
import { parseLength } from './parse-length';
import { parseNumber, tidyText, type NoNumber } from './parse-number';
import { celsiusOf, fahrenheitOf, temperatureUnit } from './temperature-text';

/** What a field asks for: a number with a unit of its own, a length in metres, or degrees Celsius. */
export type MeasureName = 'number' | 'length' | 'temperature';

/** How a value kept in SI units is typed. */
export interface Measure {
  /** Unit that stands beside the field. */
  readonly unit: (own: string) => string;
  /** What stands in the field: rounded to so many decimals of the SI unit. */
  readonly show: (value: number, digits: number) => string;
  /** A limit in a sentence, never beyond the limit itself; its unit is `limitUnit`. */
  readonly limit: (value: number, way: 'least' | 'most') => string;
  readonly limitUnit: (own: string) => string;
  /** The SI value of what was typed. */
  readonly read: (text: string) => number | NoNumber;
  /** The keyboard of a phone that types it: feet and inches need their marks. */
  readonly keys: () => 'decimal' | 'text';
}

const number: Measure = {
  unit: (own) => own,
  show: numberText,
  limit: exactText,
  limitUnit: (own) => own,
  read: parseNumber,
  keys: () => 'decimal',
};

const length: Measure = {
  unit: () => (isImperial() ? 'ft in' : 'm'),
  show: (value, digits) => (isImperial() ? feetEntry(value) : numberText(value, digits)),
  limit: (value, way) => (isImperial() ? inward(value / metresPerFoot, way) : exactText(value)),
  limitUnit: lengthUnit,
  read: (text) => parseLength(text, lengthUnit()),
  keys: () => (isImperial() ? 'text' : 'decimal'),
};

const temperature: Measure = {
  unit: temperatureUnit,
  show: (value, digits) =>
    isImperial()
      ? trimmedText(fahrenheitOf(value), Math.max(1, digits))
      : numberText(value, digits),
  limit: (value, way) => (isImperial() ? inward(fahrenheitOf(value), way) : exactText(value)),
  limitUnit: temperatureUnit,
  read: readTemperature,
  keys: () => 'decimal',
};

export const measures: Readonly<Record<MeasureName, Measure>> = { number, length, temperature };

/** A number as it is, however many decimals it has. */
export function exactText(value: number): string {
  return withMark(String(value));
}

/** `7' 10.5"`: to a tenth of an inch, or to the hundredth where the length is that exactly. */
function feetEntry(metres: number): string {
  if (!Number.isFinite(metres)) return '–';
  const inches = Math.abs(metres) / metresPerInch;
  const isHundredth = Math.abs(inches - Math.round(inches * 100) / 100) < 1e-6;
  const digits = isHundredth ? 2 : 1;
  const total = Number(inches.toFixed(digits));
  const feet = Math.floor(total / 12);
  const sign = metres < 0 && total > 0 ? '\u2212' : '';
  return `${sign}${feet}' ${trimmedText(total - 12 * feet, digits)}"`;
}

/** Degrees of the preferred scale, or of the one that is named. */
function readTemperature(text: string): number | NoNumber {
  const [, amount = '', scale] = /^(.*?) ?(?:° ?)?([cf])?$/i.exec(tidyText(text)) ?? [];
  const read = parseNumber(amount);
  if (typeof read !== 'number') return read;
  const isFahrenheit = scale === undefined ? isImperial() : scale.toLowerCase() === 'f';
  return isFahrenheit ? celsiusOf(read) : read;
}

/** To a tenth, on the inner side of a limit, so that typing what is said is never refused. */
function inward(value: number, way: 'least' | 'most'): string {
  const tenths = value * 10;
  return trimmedText(
    (way === 'least' ? Math.ceil(tenths - 1e-9) : Math.floor(tenths + 1e-9)) / 10,
    1,
  );
}
