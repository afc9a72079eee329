import { isImperial } from './length-text';
import { isNumber, numberText, withUnit } from './number-text';

export const fahrenheitOf = (celsius: number): number => celsius * 1.8 + 32;
export const celsiusOf = (fahrenheit: number): number => (fahrenheit - 32) / 1.8;

/** "21.5 °C", or "70.7 °F". */
export function temperatureText(celsius: number | null | undefined, digits = 1): string {
  if (!isNumber(celsius)) return '–';
  const shown = isImperial() ? fahrenheitOf(celsius) : celsius;
  return withUnit(numberText(shown, digits), temperatureUnit());
}

/** A difference of temperatures, which has no zero to move. */
export function warmthText(celsius: number | null | undefined, digits = 1): string {
  if (!isNumber(celsius)) return '–';
  return withUnit(numberText(isImperial() ? celsius * 1.8 : celsius, digits), temperatureUnit());
}

export function temperatureUnit(): string {
  return isImperial() ? '°F' : '°C';
}
