import { msg, str } from '@lit/localize';
import type { Target } from '../../dsp/response/target';
import { badFile, type ColumnFile } from '../microphone/column-file';
import { readRows } from '../microphone/read-rows';
import { isTrouble, type Trouble } from '../trouble';

const targetFile: ColumnFile = {
  refusal: 'bad-file',
  get name() {
    return msg('target file');
  },
  mostColumns: 2,
  get columns() {
    return msg('frequency in Hz and dB');
  },
};
const leastPoints = 2;
const highestHz = 200_000;
const mostDb = 60;

/**
 * Reads the points of a target from a text file: rows of frequency in Hz and dB, with the same
 * freedom as a calibration file. What makes no sense is refused with the line and what to do. Never
 * throws.
 */
export function parseTarget(bytes: Uint8Array): NonNullable<Target['points']> | Trouble {
  const rows = readRows(bytes, targetFile, wrongRow);
  if (isTrouble(rows)) return rows;
  if (rows.length < leastPoints) {
    return badFile(targetFile, msg(str`has one frequency; a target needs at least ${leastPoints}`));
  }
  const column = (index: number): number[] => rows.map(({ numbers }) => numbers[index] ?? 0);
  return { hz: column(0), db: column(1) };
}

function wrongRow([hz = 0, db = 0]: readonly number[]): string | null {
  if (!(hz > 0 && hz <= highestHz)) {
    return msg(str`the frequency is ${hz} Hz; it must lie above 0 and up to 200000`);
  }
  if (!(Math.abs(db) <= mostDb)) {
    return msg(str`${db} dB; the second column must be the target's level, within ±${mostDb} dB`);
  }
  return null;
}
