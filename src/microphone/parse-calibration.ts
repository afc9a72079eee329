import { msg, str } from '@lit/localize';
import { isTrouble, type Trouble } from '../trouble';
import type { MicrophoneCalibration } from './calibration';
import { badFile, calibrationFile } from './column-file';
import type { ColumnRow } from './read-columns';
import { readRows } from './read-rows';

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
  const points = readRows(bytes, calibrationFile, wrongRow);
  if (isTrouble(points)) return points;
  return coverage(points) ?? calibrationOf(points, name);
}

function wrongRow([hz = 0, db = 0, degrees = 0]: readonly number[]): string | null {
  if (!(hz > 0 && hz <= highestHz)) {
    return msg(str`the frequency is ${hz} Hz; it must lie above 0 and up to 200000`);
  }
  if (!(Math.abs(db) <= mostDb)) {
    return msg(
      str`${db} dB; the second column must be the microphone's response, within ±${mostDb} dB`,
    );
  }
  if (!(Math.abs(degrees) <= mostDegrees)) {
    return msg(str`a phase of ${degrees}°; take the delay out of it, or leave the phase out`);
  }
  return null;
}

function coverage(points: readonly ColumnRow[]): Trouble | null {
  if (points.length < leastPoints) {
    const count =
      points.length === 1 ? msg('one frequency') : msg(str`${points.length} frequencies`);
    return badFile(calibrationFile, msg(str`has ${count}; a curve needs at least ${leastPoints}`));
  }
  const [low, high] = [points[0], points.at(-1)].map((row) => row?.numbers[0] ?? 0);
  if (low !== undefined && high !== undefined && high < low * 2 ** leastOctaves) {
    return badFile(
      calibrationFile,
      msg(str`reaches from ${low} to ${high} Hz; a curve needs at least two octaves`),
    );
  }
  return null;
}

function calibrationOf(points: readonly ColumnRow[], name: string): MicrophoneCalibration {
  const column = (index: number): number[] => points.map(({ numbers }) => numbers[index] ?? 0);
  const hasPhase = points[0]?.numbers.length === 3;
  return { name, hz: column(0), db: column(1), phaseDegrees: hasPhase ? column(2) : null };
}
