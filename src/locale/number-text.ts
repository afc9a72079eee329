import { withMark } from './decimal-mark';
import { localeInForce } from './locale-in-force';

/** Narrow no-break space, set between a number and its unit. */
export const thinSpace = '\u202f';

/** True for a number that can be drawn or printed. */
export function isNumber(value: unknown): value is number {
  return typeof value === 'number' && Number.isFinite(value);
}

/** A number with a true minus sign and no negative zero; an en dash when there is none. */
export function numberText(value: number | null | undefined, digits = 0): string {
  return isNumber(value) ? withMark(plainText(value, digits)) : '–';
}

/** Like numberText, with a plus sign on positive numbers. */
export function signedText(value: number | null | undefined, digits = 0): string {
  if (!isNumber(value)) return '–';
  const text = plainText(value, digits);
  return `${value > 0 && Number(text) !== 0 ? '+' : ''}${withMark(text)}`;
}

/** Like numberText, with no zeros at its end: "1.25", "1.5", "2". */
export function trimmedText(value: number | null | undefined, mostDigits: number): string {
  if (!isNumber(value)) return '–';
  return withMark(String(Number(plainText(value, mostDigits)) + 0));
}

/** A text and its unit, if any, which no line break parts; an en dash stays alone. */
export function withUnit(text: string, unit: string): string {
  return text === '–' || unit === '' ? text : `${text}${localeInForce().space}${unit}`;
}

/** Hertz as a person types it: 62 Hz, 1.25 kHz. */
export function hzText(hz: number | null | undefined): string {
  if (!isNumber(hz)) return '–';
  if (Math.abs(hz) >= 1000) return withUnit(trimmedText(hz / 1000, 2), 'kHz');
  return withUnit(numberText(hz, Math.abs(hz) < 20 && !Number.isInteger(hz) ? 1 : 0), 'Hz');
}

export function dbText(db: number | null | undefined, digits = 1): string {
  return withUnit(numberText(db, digits), 'dB');
}

export function millisecondsText(seconds: number | null | undefined, digits = 2): string {
  return withUnit(numberText(isNumber(seconds) ? seconds * 1000 : null, digits), 'ms');
}

/** "58–67": an interval without its unit; an en dash when either end is missing. */
export function intervalText(
  interval: readonly [number, number] | null | undefined,
  digits = 0,
): string {
  if (!interval || !isNumber(interval[0]) || !isNumber(interval[1])) return '–';
  const low = numberText(interval[0], digits);
  const high = numberText(interval[1], digits);
  const joint = interval[0] < 0 || interval[1] < 0 ? ' to ' : '–';
  return `${low}${joint}${high}`;
}

/** Decimals that let the two ends of an interval differ, at least `least`. */
export function intervalDigits(interval: readonly [number, number], least: number): number {
  const width = Math.abs(interval[1] - interval[0]);
  if (!(width > 0)) return least;
  return Math.min(4, Math.max(least, Math.ceil(-Math.log10(width / 2))));
}

/** Whole seconds or minutes, for time left: "32 s", "1 min 20 s". */
export function durationText(seconds: number | null | undefined): string {
  if (!isNumber(seconds)) return '–';
  const whole = Math.max(0, Math.ceil(seconds));
  if (whole < 90) return withUnit(String(whole), 's');
  const minutes = Math.floor(whole / 60);
  const rest = whole % 60;
  return rest
    ? `${withUnit(String(minutes), 'min')} ${withUnit(String(rest), 's')}`
    : withUnit(String(minutes), 'min');
}

/** As JavaScript writes it, with no minus before a zero. */
function plainText(value: number, digits: number): string {
  const text = Math.abs(value).toFixed(digits);
  return value < 0 && Number(text) !== 0 ? `-${text}` : text;
}
