import { msg } from '@lit/localize';
import type { TakeSound } from '../../inspect/take-sound';
import { isTrouble, trouble, type Trouble } from '../../trouble';
import type { Desk } from '../desk';
import { loadAudio } from './read-record';

/** The sound of one take of the session with what it is read with; a Trouble when it is gone. */
export async function soundOf(desk: Desk, takeId: string): Promise<TakeSound | Trouble> {
  const { takes, microphone } = desk.state.document;
  const record = takes.find(({ id }) => id === takeId);
  const audio = record ? await loadAudio(desk, record) : null;
  if (!record || audio === null) return gone();
  if (isTrouble(audio)) return audio;
  return {
    takeId,
    schedule: record.schedule,
    ...audio,
    sampleRate: record.captureRate,
    calibration: record.simulated ? null : microphone.calibration,
    inForce: record.inForce ?? null,
  };
}

const gone = () =>
  trouble(
    'storage',
    msg(
      'The recording of this take is no longer in this browser; its numbers stay. Repeat the take to look into its sound.',
    ),
  );
