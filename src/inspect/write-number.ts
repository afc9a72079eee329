/** How many digits of a number are known: behind the point, or in all. */
export type Digits = { readonly decimals: number } | { readonly significant: number };

/**
 * A number as text with a decimal point, without exponent, thousands or zeros at its end; rounded to
 * the digits that are known. Throws RangeError for what is not finite and for digits out of
 * 0 … 20 decimals or 1 … 17 significant.
 */
export function writeNumber(value: number, digits: Digits): string {
  if (!Number.isFinite(value)) throw new RangeError(`a number must be finite, got ${value}`);
  const text = value.toFixed(decimalsOf(value, digits));
  const short = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return short === '-0' ? '0' : short;
}

function decimalsOf(value: number, digits: Digits): number {
  if ('decimals' in digits) {
    requireWhole('decimals', digits.decimals, 0, 20);
    return digits.decimals;
  }
  const { significant } = digits;
  requireWhole('significant', significant, 1, 17);
  if (value === 0) return 0;
  // Rounding may carry into one more digit before the point.
  const rounded = Number(value.toPrecision(significant));
  const before = Math.floor(Math.log10(Math.abs(rounded))) + 1;
  return Math.min(Math.max(significant - before, 0), 100);
}

function requireWhole(name: string, value: number, low: number, high: number): void {
  if (!Number.isInteger(value) || value < low || value > high) {
    throw new RangeError(`${name} must be whole, ${low} to ${high}, got ${value}`);
  }
}
