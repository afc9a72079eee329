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
  return new Promise((resolve) => {
    const finish = (proof: Proof | null): void => {
      worker.terminate();
      signal.removeEventListener('abort', abort);
      resolve(proof);
    };
    const abort = (): void => finish(null);
    if (signal.aborted) return finish(null);
    signal.addEventListener('abort', abort);
    worker.onmessage = ({ data }: MessageEvent<Proof>) => finish(data);
    worker.onerror = (event) => {
      event.preventDefault();
      finish(null);
    };
    const packed: PackedProofInput = {
      ...input,
      before: before && pack(before),
      after: pack(after),
    };
    worker.postMessage(packed);
  });
}
