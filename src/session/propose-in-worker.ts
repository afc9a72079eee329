import { askWorker } from '../ask-worker';
import { breathe } from '../breathe';
import { withLocale } from '../locale/with-locale';
import { packCalmly } from '../packed';
import type { Proposal } from '../proposal/proposal';
import type { BenchParts } from './bench-parts';
import { packTerms, partsToPack } from './packed-terms';

/** A worker that has proposed and waits for the next time: it need not be started again. */
let waiting: Worker | null = null;

/**
 * Proposes in a worker, so that the screen never waits; null when it was stopped or failed. What it
 * takes to ask is done in tasks of its own, after the one that wants it.
 */
export const proposeInWorker: BenchParts['propose'] = async (terms, signal) => {
  await breathe();
  if (signal.aborted) return null;
  await packCalmly(partsToPack(terms), breathe);
  if (signal.aborted) return null;
  const worker = waiting ?? startWorker();
  waiting = null;
  await breathe();
  const proposal = await askWorker<Proposal>(worker, packTerms(terms), signal);
  // One that was stopped half way, or failed, is of no further use.
  if (proposal === null || waiting) worker.terminate();
  else waiting = worker;
  return proposal;
};

function startWorker(): Worker {
  return withLocale(
    new Worker(new URL('./proposal-worker.ts', import.meta.url), { type: 'module' }),
  );
}
