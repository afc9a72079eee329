import { msg } from '@lit/localize';
import { trouble } from '../../trouble';
import { proofOf, type ProofTakes } from '../derive-proof';
import type { Desk } from '../desk';

/** What judges the takes that prove, beside the screen. */
export interface ProofJudge {
  /** Resolves when nothing is being judged any more, or nobody waits for it. */
  settled(signal: AbortSignal): Promise<void>;
}

/** Judges takes that prove, from now on, as soon as they are there; newer ones break it off. */
export function createProofJudge(desk: Desk): ProofJudge {
  let seen: ProofTakes | null = null;
  let judging: AbortController | null = null;
  let judged: Promise<void> = Promise.resolve();

  const judge = async (takes: ProofTakes, signal: AbortSignal): Promise<void> => {
    const { layout, typed, steps, before, readings: after } = takes;
    const proof = await desk.parts.judge({ layout, typed, steps, before, after }, signal);
    if (signal.aborted || desk.state.proving !== takes) return;
    if (proof) desk.set({ proof: proofOf(proof, takes) });
    else desk.raise(notJudged());
  };
  const look = (): void => {
    const { proving, proof } = desk.state;
    if (proving === seen) return;
    seen = proving;
    judging?.abort();
    judging = null;
    if (proving === null || proof !== null) return;
    judging = new AbortController();
    judged = judge(proving, judging.signal);
  };
  desk.subscribe(look);
  look();

  return {
    settled: (signal) =>
      new Promise((resolve) => {
        if (signal.aborted) resolve();
        signal.addEventListener('abort', () => resolve(), { once: true });
        void judged.then(resolve);
      }),
  };
}

const notJudged = () =>
  trouble(
    'failed',
    msg(
      'What was played through the processor could not be judged. Reload the page: the recordings are kept, and are judged again.',
    ),
  );
