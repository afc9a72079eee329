import { localeInForce } from './locale-in-force';
import {
  intervalText,
  isNumber,
  numberText,
  signedText,
  trimmedText,
  withUnit,
} from './number-text';

/** Metres in a foot and in an inch, by definition (international yard and pound, 1959). */
export const metresPerFoot = 0.3048;
export const metresPerInch = 0.0254;

export const isImperial = (): boolean => localeInForce().units === 'imperial';

/**
 * A length for a tape: "2.40 m", or "7 ft 10.5 in". Two decimals of a metre stand for half inches,
 * one for whole inches, three for tenths.
 */
export function lengthText(metres: number | null | undefined, digits = 2): string {
  if (!isNumber(metres)) return '–';
  if (!isImperial()) return withUnit(numberText(metres, digits), 'm');
  return feetAndInches(metres, digits >= 3 ? 0.1 : digits === 2 ? 0.5 : 1);
}

/**
 * A length where there is little room, or where lengths are held against each other, such as in
 * drawings, charts and intervals: "2.40 m", or decimal feet, "7.9 ft", with a decimal less.
 */
export function shortLengthText(metres: number | null | undefined, digits = 2): string {
  return withUnit(lengthNumber(metres, digits), lengthUnit());
}

/** The number of shortLengthText alone, for places whose unit stands once for many numbers. */
export function lengthNumber(metres: number | null | undefined, digits = 2): string {
  if (!isImperial() || !isNumber(metres)) return numberText(metres, digits);
  return numberText(metres / metresPerFoot, Math.max(0, digits - 1));
}

/** The unit of shortLengthText: "m" or "ft". */
export function lengthUnit(): 'm' | 'ft' {
  return isImperial() ? 'ft' : 'm';
}

/** "2.38–2.42": an interval of lengths in the unit of shortLengthText, without it. */
export function lengthIntervalText(
  interval: readonly [number, number] | null | undefined,
  digits = 2,
): string {
  if (!isImperial() || !interval) return intervalText(interval, digits);
  const feet = [interval[0] / metresPerFoot, interval[1] / metresPerFoot] as const;
  return intervalText(feet, Math.max(1, digits - 1));
}

/** A given length as it was given, without zeros at its end: "0.25 m", "10 in", "3 m", "9.8 ft". */
export function plainLengthText(metres: number): string {
  if (!isImperial()) return withUnit(trimmedText(metres, 2), 'm');
  return Math.abs(metres) < metresPerFoot
    ? withUnit(trimmedText(metres / metresPerInch, 1), 'in')
    : withUnit(trimmedText(metres / metresPerFoot, 1), 'ft');
}

/** A length under a metre or so: whole centimetres, or inches with a decimal under ten. */
export function smallLengthText(metres: number | null | undefined): string {
  if (!isNumber(metres)) return '–';
  if (!isImperial()) return withUnit(numberText(metres * 100, 0), 'cm');
  const inches = metres / metresPerInch;
  return withUnit(trimmedText(inches, Math.abs(inches) < 10 ? 1 : 0), 'in');
}

/** A length in whole millimetres, or in hundredths of an inch. */
export function tinyLengthText(metres: number | null | undefined): string {
  if (!isNumber(metres)) return '–';
  return isImperial()
    ? withUnit(trimmedText(metres / metresPerInch, 2), 'in')
    : withUnit(numberText(metres * 1000, 0), 'mm');
}

/** A difference of lengths with its sign: "+0.02 m", or "+0.8 in". */
export function signedLengthText(metres: number | null | undefined, digits = 2): string {
  if (!isNumber(metres)) return '–';
  return isImperial()
    ? withUnit(signedText(metres / metresPerInch, Math.max(0, digits - 1)), 'in')
    : withUnit(signedText(metres, digits), 'm');
}

/** A speed: "343 m/s", or "1127 ft/s". */
export function speedText(metresPerSecond: number | null | undefined, digits = 0): string {
  if (!isNumber(metresPerSecond)) return '–';
  return isImperial()
    ? withUnit(numberText(metresPerSecond / metresPerFoot, digits), 'ft/s')
    : withUnit(numberText(metresPerSecond, digits), 'm/s');
}

function feetAndInches(metres: number, step: number): string {
  const total = Math.round(Math.abs(metres) / metresPerInch / step) * step;
  // A hair's breadth keeps 12 inches of binary fractions from staying 11.99 and a bit.
  const feet = Math.floor((total + 1e-6) / 12);
  const inches = trimmedText(total - 12 * feet, 1);
  const sign = metres < 0 && total > 0 ? '\u2212' : '';
  if (feet === 0) return withUnit(`${sign}${inches}`, 'in');
  const whole = withUnit(`${sign}${feet}`, 'ft');
  return inches === '0' ? whole : `${whole}\u00a0${withUnit(inches, 'in')}`;
}
