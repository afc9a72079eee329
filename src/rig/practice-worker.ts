import type { Layout } from '../system/channel';
import type { Schedule } from '../take/schedule';
import type { MicLevel } from './port';
import { renderCapture } from './practice-capture';
import { practiceSystem, type PracticeFaults } from './practice-system';

/** What the page sends: one take to simulate. */
export interface PracticeOrder {
  readonly layout: Layout;
  readonly seed: number;
  readonly schedule: Schedule;
  readonly gainDb: number;
  readonly faults: PracticeFaults;
}

/** What the worker answers: where it is, how loud it is, then the capture. */
export type PracticeAnswer =
  | { readonly kind: 'step'; readonly position: number }
  | { readonly kind: 'level'; readonly level: MicLevel }
  | { readonly kind: 'done'; readonly samples: Float32Array }
  | { readonly kind: 'failed'; readonly why: string };

const answer = (message: PracticeAnswer): void => self.postMessage(message);

async function simulate({ layout, seed, schedule, gainDb, faults }: PracticeOrder): Promise<void> {
  const samples = await renderCapture(practiceSystem(layout, seed), schedule, {
    gainDb,
    faults,
    onStep: async (position) => {
      answer({ kind: 'step', position });
      return true;
    },
    onLevel: (level) => answer({ kind: 'level', level }),
  });
  if (!samples) return;
  const done: PracticeAnswer = { kind: 'done', samples };
  self.postMessage(done, { transfer: [samples.buffer] });
}

// A rejection in a worker does not reach the page's onerror: it is sent.
self.onmessage = (event: MessageEvent<PracticeOrder>): void => {
  simulate(event.data).catch((error: unknown) => {
    answer({ kind: 'failed', why: error instanceof Error ? error.message : String(error) });
  });
};
