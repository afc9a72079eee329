import { msg, str } from '@lit/localize';
import '../locale/hear-locale';
import type { Capture } from '../rig/port';
import type { Schedule } from '../take/schedule';
import { trouble, type Trouble } from '../trouble';
import { readStop, type StopReading } from './read-stop';

/** What the page sends: one stop to read. */
export interface StopOrder {
  readonly schedule: Schedule;
  readonly capture: Pick<Capture, 'samples' | 'sampleRate' | 'gaps'>;
}

function answerTo({ schedule, capture }: StopOrder): StopReading | Trouble {
  try {
    return readStop(schedule, capture);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return trouble('failed', msg(str`This stop could not be read (${why}). Play it again.`));
  }
}

self.onmessage = ({ data }: MessageEvent<StopOrder>): void => self.postMessage(answerTo(data));
