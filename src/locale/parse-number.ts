/** What a typed text can be when it is no number: nothing of the kind, or one that has two readings. */
export type NoNumber = 'no number' | 'two readings';

/**
 * Reads a typed number: its decimal mark is a point or a comma, whatever the locale, and nothing
 * stands between thousands. "1.234" is a little more than one; "1,234.5" and "1 234" are refused,
 * for a guess would be wrong by a factor of a thousand.
 */
export function parseNumber(text: string): number | NoNumber {
  const tidy = tidyText(text);
  if (/^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/.test(tidy)) return Number(tidy.replace(',', '.'));
  return isGrouped(tidy) ? 'two readings' : 'no number';
}

/** Without blanks around, with the minus and the blanks of a keyboard. */
export function tidyText(text: string): string {
  return text
    .replace(/[\u2212\u2013]/g, '-')
    .replace(/\s/g, ' ')
    .trim();
}

/** Whether a text is a number whose thousands stand apart. */
export function isGrouped(tidy: string): boolean {
  return /^[+-]?\d{1,3}([.,' \u2019]\d{3})+([.,]\d*)?$/.test(tidy);
}
