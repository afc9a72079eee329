import { askWorker } from '../ask-worker';
import { breathe } from '../breathe';
import { withLocale } from '../locale/with-locale';
import { pack, packCalmly } from '../packed';
import type { Proof } from './proof';
import type { ProofInput } from './proof-case';

/** What a proof is judged by, its readings as bytes. */
export type PackedProofInput = Omit<ProofInput, 'before' | 'after'> & {
  readonly before: Uint8Array | null;
  readonly after: Uint8Array;
};

/**
 * Judges in a worker, so that the screen never waits; null when it was stopped or failed. What it
 * takes to ask is done in tasks of its own.
 */
export async function judgeInWorker(input: ProofInput, signal: AbortSignal): Promise<Proof | null> {
  const { before, after } = input;
  await breathe();
  await packCalmly(before ? [before, after] : [after], breathe);
  if (signal.aborted) return null;
  const worker = withLocale(
    new Worker(new URL('./proof-worker.ts', import.meta.url), { type: 'module' }),
  );
  await breathe();
  const packed: PackedProofInput = { ...input, before: before && pack(before), after: pack(after) };
  const proof = await askWorker<Proof>(worker, packed, signal);
  worker.terminate();
  return proof;
}
