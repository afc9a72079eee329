import { breathe } from '../../breathe';
import { isTrouble, type Trouble } from '../../trouble';
import type { Desk } from '../desk';
import type { SessionDocument, TakeRecord } from '../document';
import { withReadings } from '../take-record';

/** PCM of a take, mono, and of its electrical loopback where there was one. */
export interface TakeAudio {
  readonly samples: Float32Array;
  readonly loopback: Float32Array | null;
}

/** Reads one take and puts its readings into the document; channels are shown as they arrive. */
export async function readRecord(
  desk: Desk,
  record: TakeRecord,
  audio: TakeAudio,
  signal: AbortSignal,
): Promise<Trouble | null> {
  const { microphone } = desk.state.document;
  const startedAt = performance.now();
  desk.set({ activity: { kind: 'reading', progress: 0, secondsLeft: null, channels: [] } });
  const readings = await desk.parts.read(
    record.schedule,
    { ...audio, sampleRate: record.captureRate },
    {
      ...conditionsOf(record, desk.state.document),
      simulated: record.simulated,
      // An invented microphone is as its room made it: the file of a real one says nothing of it.
      calibration: record.simulated ? null : microphone.calibration,
      inForce: record.inForce ?? null,
      close: record.position.close ?? null,
      signal,
      onChannel: (reading, progress) => {
        const { activity } = desk.state;
        if (activity.kind !== 'reading') return;
        const elapsed = (performance.now() - startedAt) / 1000;
        const secondsLeft = progress > 0 ? (elapsed * (1 - progress)) / progress : null;
        const channels = [...activity.channels, reading];
        desk.set({ activity: { kind: 'reading', progress, secondsLeft, channels } });
      },
    },
  );
  if (isTrouble(readings)) return readings;
  // Taking the readings in is a task of its own: it follows the one that brought them.
  await breathe();
  desk.change((document) => withReadings(document, record.id, readings));
  return null;
}

/** Another position than the current one keeps the tape distance it was read with. */
function conditionsOf(
  { position, readings }: TakeRecord,
  { conditions, position: here }: SessionDocument,
): SessionDocument['conditions'] {
  if (position.id === here.id || !readings || readings.absolute) return conditions;
  const { referenceDistanceMetres } = readings;
  return { ...conditions, referenceDistanceMetres };
}

/** PCM of a stored take; null when the store no longer has it. */
export async function loadAudio(
  desk: Desk,
  record: TakeRecord,
): Promise<TakeAudio | Trouble | null> {
  const { store } = desk.parts;
  const samples = await store.loadCapture(record.captureId);
  if (samples === null || isTrouble(samples)) return samples;
  const loopback = record.loopbackId === null ? null : await store.loadCapture(record.loopbackId);
  return isTrouble(loopback) ? loopback : { samples, loopback };
}
