import { msg, str } from '@lit/localize';
import type { Trouble } from '../trouble';
import { badLine, quote, type ColumnFile } from './column-file';

/** A line that holds numbers; its number counts from 1, as editors show it. */
export interface TextLine {
  readonly number: number;
  readonly text: string;
}

const noteSigns = /^(?:[#*;"!%']|\/\/)/;
const trailingNote = /\s*(?:#|\/\/|").*$/;
const trailingSeparator = /[;,\s]+$/;
/** A row of numbers is shorter; longer ones would be slow to read. */
const longestRow = 500;

/**
 * Lines that hold rows of numbers, without notes and headings. A note begins with # * ; " ! % ' or
 * //, or stands behind # // or " after the numbers; a heading is a line of words above the first
 * row. Words further down are refused, and so is a row with a word in it.
 */
export function numberLines(source: string, file: ColumnFile): readonly TextLine[] | Trouble {
  const lines: TextLine[] = [];
  for (const [index, raw] of source.split(/\r\n|\r|\n/).entries()) {
    const line = raw.replaceAll('\u001a', '').replaceAll('\u2212', '-').trim();
    if (line === '' || noteSigns.test(line)) continue;
    const number = index + 1;
    if (!/^[-+.,]*\d/.test(line)) {
      const isNumberGoneWrong = /^[-+]?(?:nan|inf|n\/a|null|undefined|-+\b)/i.test(line);
      if (lines.length === 0 && !isNumberGoneWrong) continue;
      return badLine(
        file,
        number,
        msg(str`${quote(line)} is no row of numbers. Put # before it if it is a note`),
      );
    }
    if (line.length > longestRow)
      return badLine(file, number, msg('it is too long for a row of numbers'));
    const text = line.replace(trailingNote, '').replace(trailingSeparator, '');
    lines.push({ number, text });
  }
  return lines;
}
