import { msg, str } from '@lit/localize';
export interface NumberRange {
  readonly label: string;
  readonly unit: string;
  readonly min: number;
  readonly max: number;
}

/** Reads a typed number, comma or point; a string answer says what is wrong with it. */
export function readNumber(text: string, range: NumberRange): number | string {
  const tidy = text.trim().replace(',', '.').replace('−', '-');
  const value = /^[+-]?(\d+\.?\d*|\.\d+)$/.test(tidy) ? Number(tidy) : NaN;
  if (!Number.isFinite(value)) {
    return msg(
      str`“${text.trim()}” is not a number; ${range.label.toLowerCase()} stays as it was.`,
    );
  }
  if (value < range.min || value > range.max) {
    return msg(
      str`${range.label} lies between ${signed(range.min)} and ${signed(range.max)} ${range.unit}; it stays as it was.`,
    );
  }
  return value;
}

function signed(limit: number): string {
  return String(limit).replace('-', '\u2212');
}
