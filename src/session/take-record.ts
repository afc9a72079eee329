import type { Readings } from '../reading/reading';
import type { Capture } from '../rig/port';
import type { Schedule } from '../take/schedule';
import type { SessionDocument, TakeRecord } from './document';

/** The record of a capture that was just made at the first seat; not read yet. */
export function recordOf(id: string, schedule: Schedule, capture: Capture): TakeRecord {
  return {
    id,
    position: { name: 'Seat 1', kind: 'seat' },
    startedAt: capture.startedAt,
    rig: capture.rig,
    simulated: capture.simulated,
    schedule,
    captureId: id,
    captureRate: capture.sampleRate,
    notes: capture.notes,
    readings: null,
  };
}

/** The document with one more take. */
export function withTake(document: SessionDocument, record: TakeRecord): SessionDocument {
  return { ...document, takes: [...document.takes, record] };
}

/** The document with the readings of one of its takes. */
export function withReadings(
  document: SessionDocument,
  takeId: string,
  readings: Readings,
): SessionDocument {
  const takes = document.takes.map((take) => (take.id === takeId ? { ...take, readings } : take));
  return { ...document, takes };
}

/** Readings of the newest take made of the document's layout; null when there are none. */
export function newestReadings(document: SessionDocument): Readings | null {
  const read = document.takes.findLast(
    (take) => take.schedule.layout === document.layout && take.readings !== null,
  );
  return read?.readings ?? null;
}
