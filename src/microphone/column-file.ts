import { msg, str } from '@lit/localize';
import { trouble, type Trouble, type TroubleKind } from '../trouble';

/** What a file with columns of numbers is, so that a refusal can name it. */
export interface ColumnFile {
  readonly refusal: TroubleKind;
  /** Such as "calibration file". */
  readonly name: string;
  /** Numbers in a row, at most; at least two. */
  readonly mostColumns: 2 | 3;
  /** What the columns hold. */
  readonly columns: string;
}

export const calibrationFile: ColumnFile = {
  refusal: 'bad-calibration',
  get name() {
    return msg('calibration file');
  },
  mostColumns: 3,
  get columns() {
    return msg('frequency in Hz, dB, and perhaps phase in degrees');
  },
};

/** The file is refused for a line of it, counted from 1. */
export function badLine({ refusal, name }: ColumnFile, line: number, what: string): Trouble {
  return trouble(refusal, msg(str`Line ${line} of the ${name}: ${what}.`));
}

/** The file is refused: "The calibration file is empty", and what to do. */
export function badFile({ refusal, name }: ColumnFile, what: string): Trouble {
  return trouble(refusal, msg(str`The ${name} ${what}.`));
}

/** Text in quotation marks, cut to what a sentence can carry. */
export function quote(text: string): string {
  // Control and private characters would break the sentence they stand in.
  const clean = text.replaceAll(/\p{C}/gu, ' ').trim();
  return `“${[...clean].slice(0, 30).join('')}${[...clean].length > 30 ? '…' : ''}”`;
}
