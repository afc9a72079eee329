import { withLocale } from '../locale/with-locale';
import type { Proposal } from '../proposal/proposal';
import type { BenchParts } from './bench-parts';
import { packTerms } from './packed-terms';

/** Proposes in a worker, so that the screen never waits; null when it was stopped or failed. */
export const proposeInWorker: BenchParts['propose'] = (terms, signal) =>
  new Promise((resolve) => {
    if (signal.aborted) return resolve(null);
    const worker = withLocale(
      new Worker(new URL('./proposal-worker.ts', import.meta.url), { type: 'module' }),
    );
    const finish = (proposal: Proposal | null): void => {
      worker.terminate();
      signal.removeEventListener('abort', abort);
      resolve(proposal);
    };
    const abort = (): void => finish(null);
    signal.addEventListener('abort', abort);
    worker.onmessage = ({ data }: MessageEvent<Proposal | null>) => finish(data);
    worker.onerror = (event) => {
      event.preventDefault();
      finish(null);
    };
    worker.postMessage(packTerms(terms));
  });
