import { askWorker } from '../ask-worker';
import { breathe } from '../breathe';
import { withLocale } from '../locale/with-locale';
import { packCalmly } from '../packed';
import { ParcelSender } from '../parcel';
import type { Proposal } from '../proposal/proposal';
import type { BenchParts } from './bench-parts';
import { packTerms, partsToPack } from './packed-terms';

interface Proposer {
  readonly worker: Worker;
  readonly sender: ParcelSender;
}

/** One that has proposed and waits for the next time: it need not be started or told all again. */
let waiting: Proposer | null = null;

/**
 * Proposes in a worker, so that the screen never waits; null when it was stopped or failed. What it
 * takes to ask is done in tasks of its own, after the one that wants it.
 */
export const proposeInWorker: BenchParts['propose'] = async (terms, signal) => {
  await breathe();
  if (signal.aborted) return null;
  await packCalmly(partsToPack(terms), breathe);
  if (signal.aborted) return null;
  const proposer = waiting ?? startProposer();
  const { worker, sender } = proposer;
  waiting = null;
  await breathe();
  const proposal = await askWorker<Proposal>(worker, packTerms(terms, sender), signal);
  // One that was stopped half way, or failed, is of no further use.
  if (proposal === null || waiting) worker.terminate();
  else waiting = proposer;
  return proposal;
};

function startProposer(): Proposer {
  const worker = new Worker(new URL('./proposal-worker.ts', import.meta.url), { type: 'module' });
  return { worker: withLocale(worker), sender: new ParcelSender() };
}
