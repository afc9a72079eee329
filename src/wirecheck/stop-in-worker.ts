import { msg, str } from '@lit/localize';
import { withLocale } from '../locale/with-locale';
import type { Capture } from '../rig/port';
import type { Schedule } from '../take/schedule';
import { trouble, type Trouble } from '../trouble';
import type { StopReading } from './read-stop';
import type { StopOrder } from './stop-worker';

/** Reads a stop of a walk in a worker, so that the screen never waits; see readStop. */
export function readStopInWorker(
  schedule: Schedule,
  { samples, sampleRate, gaps }: Capture,
): Promise<StopReading | Trouble> {
  return new Promise((resolve) => {
    const worker = withLocale(
      new Worker(new URL('./stop-worker.ts', import.meta.url), { type: 'module' }),
    );
    const finish = (result: StopReading | Trouble): void => {
      worker.terminate();
      resolve(result);
    };
    worker.onmessage = ({ data }: MessageEvent<StopReading | Trouble>) => finish(data);
    worker.onerror = (event) => {
      event.preventDefault();
      const why = event.message || msg('its worker could not start');
      finish(trouble('failed', msg(str`This stop could not be read (${why}). Play it again.`)));
    };
    const order: StopOrder = { schedule, capture: { samples, sampleRate, gaps } };
    worker.postMessage(order, { transfer: [samples.buffer] });
  });
}
