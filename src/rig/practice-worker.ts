import '../locale/hear-locale';
import type { Schedule } from '../take/schedule';
import type { MicLevel } from './port';
import { renderCapture } from './practice-capture';
import { renderLoopback } from './practice-loopback';
import { systemIn, type PracticeRoom } from './practice-system';

/** What the page sends: one take to simulate. */
export interface PracticeOrder {
  readonly room: PracticeRoom;
  readonly schedule: Schedule;
  readonly gainDb: number;
}

/** What the recorder wrote. */
export interface PracticeRecord {
  readonly samples: Float32Array;
  readonly loopback: Float32Array | null;
}

/** What the worker answers: where it is, how loud it is, then the capture. */
export type PracticeAnswer =
  | { readonly kind: 'step'; readonly position: number }
  | { readonly kind: 'level'; readonly level: MicLevel }
  | { readonly kind: 'done'; readonly record: PracticeRecord }
  | { readonly kind: 'failed'; readonly why: string };

const answer = (message: PracticeAnswer): void => self.postMessage(message);

async function simulate({ room, schedule, gainDb }: PracticeOrder): Promise<void> {
  const { faults, processor = null } = room;
  const system = systemIn(room);
  const samples = await renderCapture(system, schedule, {
    gainDb,
    faults,
    processor,
    onStep: async (position) => {
      answer({ kind: 'step', position });
      return true;
    },
    onLevel: (level) => answer({ kind: 'level', level }),
  });
  if (!samples) return;
  const loopback = room.loopback ? renderLoopback(system, schedule, { gainDb, faults }) : null;
  const done: PracticeAnswer = { kind: 'done', record: { samples, loopback } };
  const buffers = [samples.buffer, ...(loopback ? [loopback.buffer] : [])];
  self.postMessage(done, { transfer: buffers });
}

// A rejection in a worker does not reach the page's onerror: it is sent.
self.onmessage = (event: MessageEvent<PracticeOrder>): void => {
  simulate(event.data).catch((error: unknown) => {
    answer({ kind: 'failed', why: error instanceof Error ? error.message : String(error) });
  });
};
