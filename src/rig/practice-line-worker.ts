import '../locale/hear-locale';
import type { CapturedBlock } from './port';
import type { HeardSound } from './practice-hear';
import { runLine } from './practice-line-clock';
import { lineSimulation, type LineSimulation } from './practice-line-sound';
import { systemIn, type PracticeRoom } from './practice-system';

/** What the page sends: first the room, then what to play. */
export type LineOrder =
  | { readonly kind: 'open'; readonly room: PracticeRoom; readonly speed: number }
  | { readonly kind: 'play'; readonly sound: HeardSound | null }
  | { readonly kind: 'gain'; readonly gainDb: number };

/** What the worker answers: that the line is open, then its blocks. */
export type LineAnswer =
  | { readonly kind: 'opened' }
  | { readonly kind: 'block'; readonly block: CapturedBlock }
  | { readonly kind: 'failed'; readonly why: string };

let simulation: LineSimulation | null = null;

function obey(order: LineOrder): void {
  if (order.kind === 'play') return simulation?.play(order.sound);
  if (order.kind === 'gain') return simulation?.setGain(order.gainDb);
  const { room, speed } = order;
  simulation = lineSimulation(systemIn(room), room);
  const opened: LineAnswer = { kind: 'opened' };
  self.postMessage(opened);
  runLine(simulation, speed, (block) => {
    const answer: LineAnswer = { kind: 'block', block };
    const buffers = [block.samples.buffer, ...(block.loopback ? [block.loopback.buffer] : [])];
    self.postMessage(answer, { transfer: buffers });
  });
}

self.onmessage = (event: MessageEvent<LineOrder>): void => {
  try {
    obey(event.data);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    const failed: LineAnswer = { kind: 'failed', why };
    self.postMessage(failed);
  }
};
