import { parentPort, Worker } from 'node:worker_threads';
import { helperInWorker, type HelperWorker } from '../../src/reading/helper-in-worker';
import type { ReadingHelper } from '../../src/reading/read-together';

/** Makes a thread of Node look like a worker of a browser to helper-worker, which it then runs. */
export async function beHelper(): Promise<void> {
  const port = parentPort;
  if (!port) throw new Error('this is no thread');
  const scope = {
    postMessage: (answer: unknown, given?: { transfer: [] }) =>
      port.postMessage(answer, given?.transfer),
    // For the locale of a page, which a thread is not told.
    addEventListener: () => undefined,
    set onmessage(listener: (event: { data: unknown }) => void) {
      port.on('message', (data: unknown) => listener({ data }));
    },
  };
  Object.assign(globalThis, { self: scope });
  await import('../../src/reading/helper-worker');
}

/** As many of the app's reading helpers, each in a thread of Node that runs the module `file`. */
export function helpersInThreads(
  file: URL,
  count: number,
): { helpers: ReadingHelper[]; end(): Promise<void> } {
  const threads = Array.from({ length: count }, () => new Worker(file));
  const helpers = threads.map((thread) => {
    const worker: HelperWorker = {
      postMessage: (order, { transfer }) => thread.postMessage(order, transfer as []),
      onmessage: null,
      onerror: null,
    };
    thread.on('message', (data) => worker.onmessage?.({ data } as MessageEvent));
    thread.on('error', (error) => {
      throw error;
    });
    return helperInWorker(worker);
  });
  return {
    helpers,
    async end() {
      await Promise.all(threads.map((thread) => thread.terminate()));
    },
  };
}
