import { msg } from '@lit/localize';
import { withLocale } from '../locale/with-locale';
import { sendSound } from '../send-sound';
import type { BenchParts } from '../session/bench-parts';
import type { Trouble } from '../trouble';
import type { Readings } from './reading';
import { readingFailed, readingStopped } from './reading-troubles';
import type { ReadingAnswer, ReadingMessage } from './reading-worker';

/**
 * Reads a take in a worker, so that the screen never waits; channels are reported as they are
 * read. An abort ends the worker at once and gives a Trouble of kind 'stopped'.
 */
export const readInWorker: BenchParts['read'] = (schedule, capture, options) =>
  new Promise((resolve) => {
    const worker = withLocale(
      new Worker(new URL('./reading-worker.ts', import.meta.url), { type: 'module' }),
    );
    const finish = (result: Readings | Trouble): void => {
      worker.terminate();
      options.signal.removeEventListener('abort', abort);
      resolve(result);
    };
    const abort = (): void => finish(readingStopped());
    if (options.signal.aborted) return abort();
    options.signal.addEventListener('abort', abort);
    worker.onmessage = (event: MessageEvent<ReadingAnswer>) => {
      if (event.data.kind === 'done') finish(event.data.result);
      else options.onChannel(event.data.reading, event.data.progress);
    };
    worker.onerror = (event) => {
      event.preventDefault();
      finish(readingFailed(event.message || msg('its worker could not start')));
    };
    const { temperatureCelsius, referenceDistanceMetres, simulated } = options;
    const { calibration, inForce, close } = options;
    const { samples, sampleRate, loopback } = capture;
    const order: ReadingMessage = {
      kind: 'read',
      schedule,
      sampleRate,
      hasLoopback: Boolean(loopback),
      options: {
        temperatureCelsius,
        referenceDistanceMetres,
        simulated,
        calibration,
        inForce,
        close,
      },
    };
    const send = async (): Promise<void> => {
      await sendSound(worker, 'samples', samples, options.signal);
      if (loopback) await sendSound(worker, 'loopback', loopback, options.signal);
      if (!options.signal.aborted) worker.postMessage(order);
    };
    send().catch((error: unknown) =>
      finish(readingFailed(error instanceof Error ? error.message : String(error))),
    );
  });
