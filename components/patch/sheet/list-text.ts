import { decimalMark } from '../../../src/locale/decimal-mark';
import { exactText } from '../../../src/locale/measure';
import { parseNumber } from '../../../src/locale/parse-number';
import type { ChannelLabel } from '../../../src/system/channel';
import { layoutOrder } from '../../../src/system/layout';

/** Names with commas between; one that holds a comma, a ">" or a quotation mark stands in marks. */
export function writeNames(names: readonly unknown[]): string {
  return names.map((name) => quoted(String(name))).join(', ');
}

export function readNames(text: string): string[] {
  return split(text, ',')
    .map(unquoted)
    .filter((name) => name !== '');
}

/** Stages with ">" between, in the order in which they fill. */
export function writeChain(chain: readonly unknown[]): string {
  return chain
    .map((stage) => (Array.isArray(stage) ? writeNames(stage) : String(stage)))
    .join(' > ');
}

export function readChain(text: string): string[][] {
  return text.trim() === '' ? [] : split(text, '>').map(readNames);
}

/** A channel's label however it was typed; anything else as it stands, for the check to refuse. */
export function readLabel(text: string): ChannelLabel | (string & {}) {
  const plain = (label: string) => label.replace(/\s+/g, '').toLowerCase();
  return layoutOrder.find((label) => plain(label) === plain(text)) ?? text.trim();
}

/** Numbers with a mark between that is not the decimal mark: "40, 60.5" or "40; 60,5". */
export function writeNumbers(numbers: readonly unknown[]): string {
  return numbers.map(writeOne).join(decimalMark() === ',' ? '; ' : ', ');
}

/** A number with the locale's decimal mark; what is no number stays as it is. */
export function writeOne(value: unknown): string {
  return typeof value === 'number' ? exactText(value) : String(value);
}

/**
 * Numbers with blanks, semicolons or commas between; what is no number stays as text, for the check
 * to refuse. Where the comma is the decimal mark, it parts numbers only before a blank.
 */
export function readNumbers(text: string): (number | string)[] {
  return text
    .split(decimalMark() === ',' ? /,?[\s;]+/ : /[\s,;]+/)
    .filter((word) => word !== '')
    .map(readOne);
}

/** One number, with a decimal comma or point. */
export function readOne(text: string): number | string {
  const read = parseNumber(text);
  return typeof read === 'number' ? read : text.trim();
}

function quoted(name: string): string {
  return /[,>"]/.test(name) ? `"${name.replaceAll('"', '""')}"` : name;
}

function unquoted(text: string): string {
  const name = text.trim();
  const marked = /^"(.*)"$/s.exec(name);
  return marked ? (marked[1] ?? '').replaceAll('""', '"') : name;
}

/** Splits outside quotation marks. */
function split(text: string, separator: string): string[] {
  const parts = [''];
  let inside = false;
  for (const letter of text) {
    if (letter === '"') inside = !inside;
    if (letter === separator && !inside) parts.push('');
    else parts.push(`${parts.pop() ?? ''}${letter}`);
  }
  return parts;
}
