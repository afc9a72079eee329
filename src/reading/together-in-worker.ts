import { msg } from '@lit/localize';
import { withLocale } from '../locale/with-locale';
import type { BenchParts } from '../session/bench-parts';
import { togetherFailed } from './reading-troubles';
import type { RolloffFinding } from './rolloff-finding';
import type { TogetherOrder } from './rolloff-together';

/** A worker that answers in the order it was asked; it keeps its tables from one to the next. */
interface Reader {
  ask(order: TogetherOrder): Promise<RolloffFinding>;
}

let reader: Reader | null = null;

/** Reads a roll-off together in a worker, so that the screen never waits; see readOrder. */
export const readTogetherInWorker: BenchParts['readTogether'] = (order) => {
  reader ??= openReader(() => (reader = null));
  return reader.ask(order);
};

function openReader(onBroken: () => void): Reader {
  const worker = withLocale(
    new Worker(new URL('./together-worker.ts', import.meta.url), { type: 'module' }),
  );
  const waiting: ((finding: RolloffFinding) => void)[] = [];
  worker.onmessage = ({ data }: MessageEvent<RolloffFinding>) => waiting.shift()?.(data);
  worker.onerror = (event) => {
    event.preventDefault();
    onBroken();
    worker.terminate();
    const failed = togetherFailed(event.message || msg('its worker could not start'));
    for (const resolve of waiting.splice(0)) resolve(failed);
  };
  return {
    ask: (order) =>
      new Promise((resolve) => {
        waiting.push(resolve);
        worker.postMessage(order);
      }),
  };
}
