import { dbToPower } from '../level/decibels';
import { bandWidthHz } from './band-energy';
import type { HarmonicReading } from './harmonic-reading';

/** What was read at one drive level. */
export interface DrivenReading {
  /** Level of the drive, dB; only differences count. */
  readonly driveDb: number;
  readonly reading: HarmonicReading;
}

/** One drive level beside the lowest one. */
export interface DriveChange {
  readonly driveDb: number;
  readonly reading: HarmonicReading;
  /**
   * Level of the linear response less what the drive was raised by, dB: below 0 where the speaker
   * compresses. Null where noise hides it.
   */
  readonly gainChangeDb: readonly (number | null)[];
  /** Half the width of its 90 % interval, dB. */
  readonly spreadDb: readonly (number | null)[];
  /** Median over all frequencies that are told; null where none is. */
  readonly medianChangeDb: number | null;
}

/** The noise must lie so far below a level whose change is told, dB. */
const leastMarginDb = 15;
/** Seconds the linear response counts. */
const linearSeconds = 0.5;
/** What the reading itself may be off by, dB. */
const ownSpreadDb = 0.15;
const ninetyPercent = 1.645;
const nepersToDb = 20 / Math.LN10;

/**
 * How gain and distortion change with drive, takes at one position in rising order of drive; the
 * first is the reference. Noise moves a level by its own share in as many products as band and
 * time hold. Throws RangeError for fewer than two, equal drives or different frequencies.
 */
export function compareDrive(takes: readonly DrivenReading[]): DriveChange[] {
  const sorted = takes.toSorted((a, b) => a.driveDb - b.driveDb);
  const [lowest] = sorted;
  if (!lowest || sorted.length < 2) {
    throw new RangeError(`a comparison needs two drive levels or more, got ${takes.length}`);
  }
  for (const [at, { driveDb, reading }] of sorted.entries()) {
    if (at > 0 && !(driveDb > (sorted[at - 1]?.driveDb ?? driveDb))) {
      throw new RangeError(`drive levels must differ, got ${driveDb} dB twice`);
    }
    const alike =
      reading.hz.length === lowest.reading.hz.length &&
      reading.hz.every((hz, i) => Math.abs(hz - (lowest.reading.hz[i] ?? 0)) < 1e-6 * hz);
    if (!alike) throw new RangeError('readings must share their frequencies');
  }
  return sorted.map((take) => changeOf(take, lowest));
}

function changeOf(take: DrivenReading, lowest: DrivenReading): DriveChange {
  const { driveDb, reading } = take;
  const gainChangeDb: (number | null)[] = [];
  const spreadDb: (number | null)[] = [];
  for (const [i, hz] of reading.hz.entries()) {
    const margins = [reading, lowest.reading].map((one) => marginAt(one, i));
    if (Math.min(...margins) < leastMarginDb) {
      gainChangeDb.push(null);
      spreadDb.push(null);
      continue;
    }
    const louder = levelAt(reading, i) - levelAt(lowest.reading, i);
    gainChangeDb.push(louder - (driveDb - lowest.driveDb));
    const products = Math.max(bandWidthHz(hz) * linearSeconds, 1);
    const noise = margins.reduce((sum, db) => sum + dbToPower(-db), 0);
    const random = ninetyPercent * nepersToDb * Math.sqrt(noise / (2 * products));
    spreadDb.push(take === lowest ? 0 : Math.hypot(random, ownSpreadDb));
  }
  const told = gainChangeDb.filter((one) => one !== null).toSorted((a, b) => a - b);
  return {
    driveDb,
    reading,
    gainChangeDb,
    spreadDb,
    medianChangeDb: told[told.length >> 1] ?? null,
  };
}

function levelAt({ fundamentalDb }: HarmonicReading, i: number): number {
  return fundamentalDb[i] ?? 0;
}

function marginAt(reading: HarmonicReading, i: number): number {
  return levelAt(reading, i) - (reading.fundamentalNoiseDb[i] ?? 0);
}
