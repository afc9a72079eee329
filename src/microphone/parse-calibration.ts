import { isTrouble, trouble, type Trouble } from '../trouble';
import type { MicrophoneCalibration } from './calibration';
import { decodeText } from './decode-text';
import { badLine, numberLines } from './number-lines';
import { readColumns, type CalibrationRow } from './read-columns';

const mostBytes = 2_000_000;
const mostRows = 100_000;
const leastPoints = 5;
const leastOctaves = 2;
const highestHz = 200_000;
const mostDb = 40;
/** Ten turns: more is a delay left in the phase, which no microphone has. */
const mostDegrees = 3600;

/**
 * Reads a microphone calibration file: rows of frequency in Hz, dB, and perhaps phase in degrees.
 * Takes any usual text encoding, separator, decimal sign, note and order; what makes no sense is
 * refused with the line and what to do. Never throws.
 */
export function parseCalibration(bytes: Uint8Array, name: string): MicrophoneCalibration | Trouble {
  if (bytes.length === 0) return refuse('The calibration file is empty. Choose another file');
  if (bytes.length > mostBytes) {
    return refuse('The calibration file is larger than 2 MB. Choose the text file with the curve');
  }
  const text = decodeText(bytes);
  const kind = foreignKind(bytes, text);
  if (text === null || kind !== null) {
    return refuse(
      `The calibration file is ${kind ?? 'no text'}. Choose the text file with columns of frequency and dB`,
    );
  }
  const lines = numberLines(text);
  if (isTrouble(lines)) return lines;
  if (lines.length === 0) {
    return refuse(
      'The calibration file has no row of numbers. It needs columns of frequency and dB',
    );
  }
  if (lines.length > mostRows) {
    return refuse(`The calibration file has more than ${mostRows} rows. Choose a shorter one`);
  }
  const rows = readColumns(lines);
  if (isTrouble(rows)) return rows;
  const points = sortPoints(rows);
  if (isTrouble(points)) return points;
  return coverage(points) ?? calibrationOf(points, name);
}

/** What the file is when it is none of ours; null when it may be. */
function foreignKind(bytes: Uint8Array, text: string | null): string | null {
  const head = String.fromCharCode(...bytes.subarray(0, 4));
  if (/^(?:RIFF|RF64|FORM|fLaC|OggS|ID3)/.test(head)) return 'an audio file';
  if (head.startsWith('PK')) return 'an archive or a spreadsheet';
  if (head.startsWith('%PDF')) return 'a PDF';
  const start = text?.trimStart() ?? '';
  if (start.startsWith('<')) return 'a web page or XML';
  if (/^[{[]/.test(start)) return 'JSON';
  return null;
}

function sortPoints(rows: readonly CalibrationRow[]): readonly CalibrationRow[] | Trouble {
  for (const { line, numbers } of rows) {
    const [hz = 0, db = 0, degrees = 0] = numbers;
    if (!(hz > 0 && hz <= highestHz)) {
      return badLine(line, `the frequency is ${hz} Hz; it must lie above 0 and up to 200000`);
    }
    if (!(Math.abs(db) <= mostDb)) {
      return badLine(
        line,
        `${db} dB; the second column must be the microphone's response, within ±${mostDb} dB`,
      );
    }
    if (!(Math.abs(degrees) <= mostDegrees)) {
      return badLine(
        line,
        `a phase of ${degrees}°; take the delay out of it, or leave the phase out`,
      );
    }
  }
  const sorted = rows.toSorted((a, b) => hzOf(a) - hzOf(b) || a.line - b.line);
  const points: CalibrationRow[] = [];
  for (const row of sorted) {
    const last = points.at(-1);
    if (!last || hzOf(last) !== hzOf(row)) points.push(row);
    else if (last.numbers.some((value, column) => value !== row.numbers[column])) {
      return badLine(
        row.line,
        `another value for ${hzOf(row)} Hz than in line ${last.line}; keep one of them`,
      );
    }
  }
  return points;
}

function coverage(points: readonly CalibrationRow[]): Trouble | null {
  if (points.length < leastPoints) {
    const count = points.length === 1 ? 'one frequency' : `${points.length} frequencies`;
    return refuse(`The calibration file has ${count}; a curve needs at least ${leastPoints}`);
  }
  const [low, high] = [points[0], points.at(-1)].map((row) => (row ? hzOf(row) : 0));
  if (low !== undefined && high !== undefined && high < low * 2 ** leastOctaves) {
    return refuse(
      `The calibration file reaches from ${low} to ${high} Hz; a curve needs at least two octaves`,
    );
  }
  return null;
}

function calibrationOf(points: readonly CalibrationRow[], name: string): MicrophoneCalibration {
  const column = (index: number): number[] => points.map(({ numbers }) => numbers[index] ?? 0);
  const hasPhase = points[0]?.numbers.length === 3;
  return { name, hz: column(0), db: column(1), phaseDegrees: hasPhase ? column(2) : null };
}

function hzOf(row: CalibrationRow): number {
  return row.numbers[0] ?? 0;
}

function refuse(sentence: string): Trouble {
  return trouble('bad-calibration', `${sentence}.`);
}
