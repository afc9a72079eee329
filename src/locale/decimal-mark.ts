import { localeInForce } from './locale-in-force';

const marks = new Map<string, string>();

/** The decimal mark of the locale in force, by the browser's data: a point or a comma. */
export function decimalMark(): string {
  const tag = localeInForce().numbers;
  const known = marks.get(tag);
  if (known !== undefined) return known;
  const parts = new Intl.NumberFormat(tag, { numberingSystem: 'latn' }).formatToParts(1.5);
  const mark = parts.find(({ type }) => type === 'decimal')?.value === ',' ? ',' : '.';
  marks.set(tag, mark);
  return mark;
}

/** A number as JavaScript writes it, with the decimal mark and the minus sign of a text. */
export function withMark(text: string): string {
  return text.replace('.', decimalMark()).replace('-', '\u2212');
}

/** A finished text whose numbers have a point, with the decimal mark of the locale in them. */
export function localMarks(text: string): string {
  return text.replace(/(\d)\.(?=\d)/g, `$1${decimalMark()}`);
}
