import { numberText } from '../../../src/locale/number-text';
import type { LevelPictureData } from './level-picture-data';

/** About so many columns and rows are read in the table; the copy has all. */
const someColumns = 8;
const someRows = 40;

/** What stands for a level that is drawn as nothing. */
function cellText(db: number, lowestDb: number): string {
  return db <= lowestDb ? `< ${numberText(lowestDb)}` : numberText(db, 1);
}

/** The table behind a picture: a row for a frequency, a column for a moment. */
export function pictureTable({ hz, seconds, db, lowestDb }: LevelPictureData): {
  readonly head: string[];
  readonly rows: string[][];
} {
  const moments = every(seconds.length, someColumns);
  return {
    head: ['Hz', ...moments.map((i) => `${numberText((seconds[i] ?? 0) * 1000)}\u202fms, dB`)],
    rows: every(hz.length, someRows).map((k) => [
      numberText(hz[k], (hz[k] ?? 0) < 100 ? 1 : 0),
      ...moments.map((i) => cellText(db[k * seconds.length + i] ?? lowestDb, lowestDb)),
    ]),
  };
}

/** All levels as tab-separated text with plain signs. */
export function pictureCopy({ hz, seconds, db }: LevelPictureData): string {
  const moments = Array.from(seconds);
  const head = ['Hz', ...moments.map((second) => `${plain(second * 1000)} ms dB`)];
  const lines = Array.from(hz, (one, k) =>
    [one, ...moments.map((_, i) => db[k * moments.length + i] ?? Number.NaN)]
      .map((value) => (Number.isFinite(value) ? plain(value) : ''))
      .join('\t'),
  );
  return `${head.join('\t')}\n${lines.join('\n')}\n`;
}

function plain(value: number): string {
  return String(Number(value.toPrecision(4)));
}

/** Indices of so many things, evenly spaced, about `some` of them. */
function every(count: number, some: number): number[] {
  const stride = Math.max(1, Math.floor(count / some));
  return Array.from({ length: Math.ceil(count / stride) }, (_, n) => n * stride);
}
