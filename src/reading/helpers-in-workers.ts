import { withLocale } from '../locale/with-locale';
import type { HelperAnswer, HelperOrder } from './helper-worker';
import type { ReadingHelper } from './read-together';
import type { ChannelReading } from './reading';

/** More gain little: the take's clock is found by one thread. */
const mostHelpers = 3;

/** Helpers for all cores but this thread's, in workers that end with this one. */
export function helpersInWorkers(): ReadingHelper[] {
  const cores = navigator.hardwareConcurrency;
  const count = Number.isFinite(cores) ? Math.min(mostHelpers, Math.max(0, cores - 1)) : 0;
  return Array.from({ length: count }, helperInWorker);
}

interface Waiting {
  resolve(reading: ChannelReading): void;
  reject(why: Error): void;
}

function helperInWorker(): ReadingHelper {
  const worker = withLocale(
    new Worker(new URL('./helper-worker.ts', import.meta.url), { type: 'module' }),
  );
  const waiting: Waiting[] = [];
  let broken: Error | null = null;
  const order = (what: HelperOrder, give: Transferable[] = []): void =>
    worker.postMessage(what, { transfer: give });
  worker.onmessage = ({ data }: MessageEvent<HelperAnswer>) => {
    const first = waiting.shift();
    if ('reading' in data) first?.resolve(data.reading);
    else first?.reject(new Error(data.failed));
  };
  worker.onerror = (event) => {
    event.preventDefault();
    broken = new Error(event.message || 'a worker could not start');
    for (const one of waiting.splice(0)) one.reject(broken);
  };
  return {
    begin: (take) => order({ kind: 'take', take }),
    read: (label, piece) =>
      new Promise((resolve, reject) => {
        if (broken) return reject(broken);
        waiting.push({ resolve, reject });
        order({ kind: 'channel', label, piece }, [piece.samples.buffer]);
      }),
  };
}
