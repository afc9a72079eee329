import { judgeProof } from '../../../src/proof/judge-proof';
import { proposeSettings } from '../../../src/proposal/propose-settings';
import { readTake } from '../../../src/reading/read-take';
import { readOrder } from '../../../src/reading/read-order';
import { practiceRig } from '../../../src/rig/practice';
import { closeMetres } from '../../../src/rig/practice-hold';
import { hiddenFaults } from '../../../src/rig/practice-miswiring';
import type { BenchState } from '../../../src/session/bench';
import type { BenchParts } from '../../../src/session/bench-parts';
import type { SessionDocument } from '../../../src/session/document';
import { newSession } from '../../../src/session/new-session';
import { SessionBench } from '../../../src/session/session-bench';
import { layoutFromName } from '../../../src/system/layout';
import { isTrouble, trouble } from '../../../src/trouble';
import { readStop } from '../../../src/wirecheck/read-stop';
import { inspectHere } from './inspect-here';
import { memoryStore } from './memory-store';

/** A bench of two speakers in the practice room, with short sweeps, unless told otherwise. */
export function makeBench(
  changes: Partial<BenchParts> = {},
  document: Partial<SessionDocument> = {},
) {
  const { held, store } = memoryStore();
  let ids = 0;
  const parts: BenchParts = {
    store,
    devices: {
      list: () => Promise.resolve({ microphones: [], outputs: [] }),
      ask: () => Promise.resolve(null),
      watch: () => () => undefined,
    },
    makeRig: (session, layout, hold = null, proving = null) =>
      Promise.resolve(
        practiceRig({
          layout,
          seed: session.practice.seed,
          hold: hold ?? session.position.close?.channel ?? null,
          ...(hold === null ? { holdMetres: closeMetres } : {}),
          faults: hiddenFaults(layout, session.practice.hidden),
          processor: proving && { typed: proving, slips: session.practice.slips },
        }),
      ),
    readTogether: (order) => Promise.resolve(readOrder(order)),
    propose: ({ readings, layout, processor, options }) => {
      const proposal = proposeSettings(readings, layout, processor, options);
      return Promise.resolve(isTrouble(proposal) ? null : proposal);
    },
    judge: (input) => Promise.resolve(judgeProof(input)),
    readStop: (schedule, capture) => Promise.resolve(readStop(schedule, capture)),
    read: (schedule, capture, options) => readTake(schedule, capture, options),
    inspect: inspectHere,
    takeFiles: () => Promise.resolve([]),
    readRecording: () => Promise.resolve(trouble('bad-wav', 'This is not a WAV.')),
    newId: () => `id ${++ids}`,
    now: () => '2030-01-02T03:04:05.000Z',
    ...changes,
  };
  const fresh = newSession('session', parts.now());
  const take = { ...fresh.take, sweepSeconds: 1 };
  const session: SessionDocument = { ...fresh, take, layout: '2.0', ...document };
  const layout = layoutFromName(session.layout);
  if (isTrouble(layout)) throw new Error(layout.sentence);
  return { bench: new SessionBench(parts, session, layout), held };
}

/** Lets the saving that a change started come to its end. */
export const settled = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 10));

/** Resolves once the bench's state is as wanted. */
export function until(
  bench: SessionBench,
  wanted: (state: BenchState) => boolean,
): Promise<BenchState> {
  return new Promise((resolve) => {
    const look = (): void => {
      if (!wanted(bench.state)) return;
      leave();
      resolve(bench.state);
    };
    const leave = bench.subscribe(look);
    look();
  });
}
