import { lengthText } from '../locale/length-text';
import { dbText, millisecondsText, numberText, signedText, withUnit } from '../locale/number-text';
import { listInWords } from '../system/list-in-words';

/** Whole hertz with its unit: "64 Hz". */
export function sayHz(hz: number): string {
  return withUnit(numberText(Math.round(hz)), 'Hz');
}

/** Metres to the centimetre, or feet and inches: "2.40 m". */
export function sayMetres(metres: number): string {
  return lengthText(metres);
}

/** Decibels to a tenth, signed: "+1.5 dB", "−0.5 dB", "0.0 dB". */
export function sayDb(db: number): string {
  return withUnit(signedText(db, 1), 'dB');
}

/** A number with so many decimals, a true minus sign, and no minus before a zero. */
export function sayNumber(value: number, decimals: number): string {
  return numberText(value, decimals);
}

/** "side left", "side left and side right", "a, b and c". */
export function sayList(names: readonly string[]): string {
  return names.length === 0 ? '' : listInWords(names);
}

/** The sentence with its first letter large. */
export function startSentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Decibels that are lost, gained or apart, without a sign: "0.6 dB". */
export function sayLossDb(db: number): string {
  return dbText(Math.abs(db));
}

/** Milliseconds to a hundredth, without a sign: "0.06 ms". */
export function sayMs(seconds: number): string {
  return millisecondsText(Math.abs(seconds));
}
