import { saidIn } from '../locale/said-in';
import type { NoiseReading } from '../noise/noise-state';
import type { Readings } from '../reading/reading';
import type { Capture } from '../rig/port';
import type { SettingsInForce } from '../system/declared-settings';
import type { Schedule } from '../take/schedule';
import { keepAlike } from './follow/keep-alike';
import type { Position, Proving, SessionDocument, TakePurpose, TakeRecord } from './document';

/**
 * The record of a capture that was just made at a position; not read yet. `proving` is what it is to
 * prove, null for a take that reads the system.
 */
export function recordOf(
  id: string,
  position: Position,
  schedule: Schedule,
  capture: Capture,
  inForce: SettingsInForce,
  gainDb: number | null,
  proving: Proving | null = null,
): TakeRecord {
  return {
    id,
    position,
    startedAt: capture.startedAt,
    rig: capture.rig,
    simulated: capture.simulated,
    schedule,
    captureId: id,
    loopbackId: capture.loopback ? `${id} loopback` : null,
    captureRate: capture.sampleRate,
    notes: capture.notes,
    readings: null,
    // A simulated room has no processor but in proof, and proof takes nothing out.
    ...(capture.simulated || proving ? {} : { inForce }),
    ...(proving ? { purpose: 'prove' as const, proves: proving } : {}),
    ...(gainDb === null ? {} : { gainDb }),
  };
}

/** The document with one more take. */
export function withTake(document: SessionDocument, record: TakeRecord): SessionDocument {
  return { ...document, takes: [...document.takes, record] };
}

/**
 * The document with the readings of one of its takes, just read. What came out as it was before stays
 * the very value, so that nothing is worked out from it anew.
 */
export function withReadings(
  document: SessionDocument,
  takeId: string,
  readings: Readings,
): SessionDocument {
  return withChangedTake(document, takeId, (take) => ({
    ...take,
    readings: keepAlike(take.readings, readings),
    outdated: false,
    saidIn: saidIn(),
  }));
}

/** The document with one of its takes changed. */
export function withChangedTake(
  document: SessionDocument,
  takeId: string,
  change: (take: TakeRecord) => TakeRecord,
): SessionDocument {
  const takes = document.takes.map((take) => (take.id === takeId ? change(take) : take));
  return { ...document, takes };
}

/** The document with a noise reading; one that is there already is replaced. */
export function withNoiseReading(
  document: SessionDocument,
  reading: NoiseReading,
): SessionDocument {
  const others = document.noiseReadings.filter(({ id }) => id !== reading.id);
  return { ...document, noiseReadings: [...others, reading] };
}

/**
 * Takes of one purpose of the document's layout at its position, oldest first. Takes of another rig than the
 * newest are left out: what a simulated room gave must not mix with what a real one did.
 */
export function takesHere(
  document: SessionDocument,
  wanted: TakePurpose = 'probe',
): readonly TakeRecord[] {
  const here = document.takes.filter(
    ({ schedule, position, purpose = 'probe' }) =>
      purpose === wanted &&
      schedule.layout === document.layout &&
      position.id === document.position.id,
  );
  const newest = here.findLast((take) => take.readings !== null);
  return newest ? here.filter((take) => take.rig === newest.rig) : here;
}
