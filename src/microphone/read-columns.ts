import { msg, str } from '@lit/localize';
import { isTrouble, type Trouble } from '../trouble';
import { badFile, badLine, quote, type ColumnFile } from './column-file';
import type { TextLine } from './number-lines';

/** Numbers of one line: frequency, dB and perhaps phase. */
export interface ColumnRow {
  readonly line: number;
  readonly numbers: readonly number[];
}

/** How many of a row's comma-separated pieces make each number. */
type Grouping = readonly number[];

const numberText = /^[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d{1,3})?$/i;
/** A whole number as it is never written, but the part before or after a decimal comma may be. */
const partText = /^[-+]?0\d|^-0$/;
/** Ways to read commas alone: as separators, or some of them as decimal signs. */
const groupings: readonly Grouping[] = [
  [1, 1],
  [1, 1, 1],
  [2, 2],
  [2, 2, 2],
  [1, 2],
  [2, 1],
];

/**
 * Reads rows of two numbers, or three where the file may have them. Columns stand apart by
 * semicolons, tabs, spaces, or commas with or without a space; decimals have points or commas. What
 * the commas mean is found from the whole file; when two readings fit, the file is refused.
 */
export function readColumns(
  lines: readonly TextLine[],
  file: ColumnFile,
): readonly ColumnRow[] | Trouble {
  const splitters = [/\s*;\s*/, /,?\t\s*,?|\s+,\s*|,\s+|\s+/];
  for (const splitter of splitters) {
    // One such sign in half of the lines makes it the separator; the others are then wrong.
    const split = lines.filter(({ text }) => fields(text, splitter).length > 1).length;
    if (split > lines.length / 2) return readSplit(lines, splitter, file);
  }
  const points = lines.some(({ text }) => text.includes('.'));
  return points ? readSplit(lines, /,/, file) : readCommas(lines, file);
}

function readSplit(
  lines: readonly TextLine[],
  splitter: RegExp,
  file: ColumnFile,
): readonly ColumnRow[] | Trouble {
  const rows: ColumnRow[] = [];
  let pointLine = 0;
  let commaLine = 0;
  for (const { number, text } of lines) {
    const row = fields(text, splitter);
    if (row.some((field) => field.includes('.'))) pointLine ||= number;
    if (row.some((field) => field.includes(','))) commaLine ||= number;
    if (pointLine > 0 && commaLine > 0) {
      const other =
        pointLine === commaLine
          ? msg('both signs')
          : msg(str`the other sign than line ${Math.min(pointLine, commaLine)}`);
      return badLine(
        file,
        number,
        msg(
          str`its numbers have ${other} for decimals; use points or commas only, and none for thousands`,
        ),
      );
    }
    const read = readRow(
      file,
      number,
      row.map((field) => field.replace(',', '.')),
      rows[0],
    );
    if (isTrouble(read)) return read;
    rows.push(read);
  }
  return rows;
}

function readCommas(lines: readonly TextLine[], file: ColumnFile): readonly ColumnRow[] | Trouble {
  const split = lines.map(({ number, text }) => ({ number, pieces: text.split(',') }));
  const possible = groupings.filter(({ length }) => length <= file.mostColumns);
  const fitting = possible.filter((grouping) =>
    split.every(({ pieces }) => {
      const grouped = group(pieces, grouping);
      if (grouped === null || grouped.some((text) => partText.test(text))) return false;
      return grouped.every((text) => numberText.test(text));
    }),
  );
  const [grouping, other] = fitting;
  const odd = split.find(({ pieces }) => pieces.length > 3);
  if (other || (!grouping && odd)) {
    const text = (other ? undefined : odd?.pieces.join(',')) ?? lines[0]?.text ?? '';
    const why = other ? msg('can be read in two ways') : msg('cannot be told apart');
    return badFile(
      file,
      msg(
        str`has commas between numbers and perhaps in them: ${quote(text)} ${why}. Separate the columns by semicolons or tabs`,
      ),
    );
  }
  const rows: ColumnRow[] = [];
  for (const { number, pieces } of split) {
    const texts = grouping ? group(pieces, grouping) : null;
    const read = readRow(file, number, texts ?? pieces, rows[0]);
    if (isTrouble(read)) return read;
    rows.push(read);
  }
  return rows;
}

/** The pieces joined to numbers with points; null when their count does not fit. */
function group(pieces: readonly string[], grouping: Grouping): string[] | null {
  if (grouping.reduce((sum, count) => sum + count, 0) !== pieces.length) return null;
  let at = 0;
  return grouping.map((count) => {
    const text = pieces
      .slice(at, at + count)
      .map((piece) => piece.trim())
      .join('.');
    at += count;
    return text;
  });
}

function readRow(
  file: ColumnFile,
  line: number,
  texts: readonly string[],
  first: ColumnRow | undefined,
): ColumnRow | Trouble {
  if (texts.length < 2 || texts.length > file.mostColumns) {
    const count = texts.length === 1 ? msg('one number') : msg(str`${texts.length} numbers`);
    const wanted = file.mostColumns === 3 ? msg('two or three') : 'two';
    return badLine(file, line, msg(str`${count} where ${wanted} must stand: ${file.columns}`));
  }
  if (first && first.numbers.length !== texts.length) {
    return badLine(
      file,
      line,
      msg(
        str`${texts.length} numbers, but line ${first.line} has ${first.numbers.length}; all rows need the same columns`,
      ),
    );
  }
  const wrong = texts.find((text) => !numberText.test(text) || !Number.isFinite(Number(text)));
  if (wrong !== undefined) return badLine(file, line, msg(str`${quote(wrong)} is no number`));
  return { line, numbers: texts.map(Number) };
}

/** Fields of a line; a separator at its end opens no further one. */
function fields(text: string, splitter: RegExp): string[] {
  const found = text.split(splitter);
  return found.at(-1) === '' ? found.slice(0, -1) : found;
}
