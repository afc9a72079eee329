import { breathe } from '../../breathe';
import type { Capture } from '../../rig/port';
import { settingsInForce } from '../../system/declared-settings';
import type { Schedule } from '../../take/schedule';
import type { Trouble } from '../../trouble';
import type { Desk } from '../desk';
import type { Proving, TakeRecord } from '../document';
import { exposeCapture } from './expose';
import { readRecord } from './read-record';
import { recordOf, withTake } from '../take-record';
import { stimulusGainDb } from './stimulus-gain';

/**
 * Stores a capture at the current position, adds it to the session, then reads it. `proving` is what
 * it is to prove, null for none.
 */
export async function keepCapture(
  desk: Desk,
  schedule: Schedule,
  capture: Capture,
  signal: AbortSignal,
  proving: Proving | null = null,
): Promise<Trouble | null> {
  const record = await storeCapture(desk, schedule, capture, proving);
  // Handing the sound to who reads it is a task of its own: it follows the one that showed the take.
  await breathe();
  return readRecord(desk, record, capture, signal);
}

async function storeCapture(
  desk: Desk,
  schedule: Schedule,
  capture: Capture,
  proving: Proving | null,
): Promise<TakeRecord> {
  const { parts } = desk;
  const { document } = desk.state;
  const inForce = settingsInForce(document);
  const gainDb =
    capture.rig === 'recording' ? null : stimulusGainDb({ kind: capture.rig }, document);
  const record = recordOf(
    parts.newId(),
    document.position,
    schedule,
    capture,
    inForce,
    gainDb,
    proving,
  );
  const { captureId, loopbackId } = record;
  // Storing begins in a task of its own: it follows the one that brought the sound.
  await breathe();
  const lost = [await parts.store.saveCapture(captureId, capture.samples)];
  if (loopbackId !== null && capture.loopback) {
    lost.push(await parts.store.saveCapture(loopbackId, capture.loopback));
  }
  for (const problem of lost) if (problem) desk.raise(problem);
  desk.change((document) => withTake(document, record));
  await exposeCapture(desk, capture);
  return record;
}
