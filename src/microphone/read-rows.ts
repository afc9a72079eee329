import { msg, str } from '@lit/localize';
import { isTrouble, type Trouble } from '../trouble';
import { badFile, badLine, type ColumnFile } from './column-file';
import { decodeText } from './decode-text';
import { numberLines } from './number-lines';
import { readColumns, type ColumnRow } from './read-columns';

const mostBytes = 2_000_000;
const mostRows = 100_000;

/**
 * Reads a file with columns of numbers, the first of them frequencies: its rows by rising frequency,
 * each frequency once. Takes any usual text encoding, separator, decimal sign, note and order; a row
 * that `wrongRow` says something of is refused with its line. Never throws.
 */
export function readRows(
  bytes: Uint8Array,
  file: ColumnFile,
  wrongRow: (numbers: readonly number[]) => string | null,
): readonly ColumnRow[] | Trouble {
  if (bytes.length === 0) return badFile(file, msg('is empty. Choose another file'));
  if (bytes.length > mostBytes) {
    return badFile(file, msg('is larger than 2 MB. Choose the text file with the curve'));
  }
  const text = decodeText(bytes);
  const kind = foreignKind(bytes, text);
  if (text === null || kind !== null) {
    const advice = msg('Choose the text file with columns of frequency and dB');
    return badFile(file, msg(str`is ${kind ?? msg('no text')}. ${advice}`));
  }
  const lines = numberLines(text, file);
  if (isTrouble(lines)) return lines;
  if (lines.length === 0) {
    return badFile(file, msg('has no row of numbers. It needs columns of frequency and dB'));
  }
  if (lines.length > mostRows) {
    return badFile(file, msg(str`has more than ${mostRows} rows. Choose a shorter one`));
  }
  const rows = readColumns(lines, file);
  if (isTrouble(rows)) return rows;
  for (const { line, numbers } of rows) {
    const wrong = wrongRow(numbers);
    if (wrong !== null) return badLine(file, line, wrong);
  }
  return sortRows(rows, file);
}

/** What the file is when it is none of ours; null when it may be. */
function foreignKind(bytes: Uint8Array, text: string | null): string | null {
  const head = String.fromCharCode(...bytes.subarray(0, 4));
  if (/^(?:RIFF|RF64|FORM|fLaC|OggS|ID3)/.test(head)) return msg('an audio file');
  if (head.startsWith('PK')) return msg('an archive or a spreadsheet');
  if (head.startsWith('%PDF')) return msg('a PDF');
  const start = text?.trimStart() ?? '';
  if (start.startsWith('<')) return msg('a web page or XML');
  if (/^[{[]/.test(start)) return msg('JSON');
  return null;
}

function sortRows(rows: readonly ColumnRow[], file: ColumnFile): readonly ColumnRow[] | Trouble {
  const sorted = rows.toSorted((a, b) => hzOf(a) - hzOf(b) || a.line - b.line);
  const points: ColumnRow[] = [];
  for (const row of sorted) {
    const last = points.at(-1);
    if (!last || hzOf(last) !== hzOf(row)) points.push(row);
    else if (last.numbers.some((value, column) => value !== row.numbers[column])) {
      return badLine(
        file,
        row.line,
        msg(str`another value for ${hzOf(row)} Hz than in line ${last.line}; keep one of them`),
      );
    }
  }
  return points;
}

function hzOf(row: ColumnRow): number {
  return row.numbers[0] ?? 0;
}
