import type { CapturedBlock, LineSound } from './port';
import { runLine } from './practice-line-clock';
import { lineSimulation } from './practice-line-sound';
import type { LineAnswer, LineOrder } from './practice-line-worker';
import { practiceSystem, type PracticeRoom } from './practice-system';

/** The far end of a simulated line, wherever it is computed. */
export interface PracticeLine {
  play(sound: LineSound | null): void;
  setGain(gainDb: number): void;
  /** Nothing is called back afterwards. */
  close(): void;
}

export interface PracticeLineListeners {
  readonly onBlock: (block: CapturedBlock) => void;
  /** The computation failed; the line is closed already. */
  readonly onFailed: (why: string) => void;
}

/**
 * Opens a simulated line beside the page: in a worker where there are workers, else here. Rejects
 * when it cannot start.
 */
export function openPracticeLine(
  room: PracticeRoom,
  speed: number,
  listeners: PracticeLineListeners,
): Promise<PracticeLine> {
  return typeof Worker === 'undefined'
    ? Promise.resolve(openHere(room, speed, listeners))
    : openInWorker(room, speed, listeners);
}

function openInWorker(
  room: PracticeRoom,
  speed: number,
  { onBlock, onFailed }: PracticeLineListeners,
): Promise<PracticeLine> {
  return new Promise((resolve, reject) => {
    const url = new URL('./practice-line-worker.ts', import.meta.url);
    const worker = new Worker(url, { type: 'module' });
    let closed = false;
    let opened = false;
    const close = (): void => {
      closed = true;
      worker.terminate();
    };
    const fail = (why: string): void => {
      if (closed) return;
      close();
      if (opened) onFailed(why);
      else reject(new Error(why));
    };
    const send = (order: LineOrder): void => worker.postMessage(order);
    worker.onmessage = ({ data }: MessageEvent<LineAnswer>) => {
      if (closed) return;
      if (data.kind === 'failed') return fail(data.why);
      if (data.kind === 'block') return onBlock(data.block);
      opened = true;
      resolve({
        play: (sound) => send({ kind: 'play', sound }),
        setGain: (gainDb) => send({ kind: 'gain', gainDb }),
        close,
      });
    };
    worker.onerror = (event) => {
      event.preventDefault();
      fail(event.message || 'its worker could not start');
    };
    send({ kind: 'open', room, speed });
  });
}

function openHere(
  room: PracticeRoom,
  speed: number,
  { onBlock }: PracticeLineListeners,
): PracticeLine {
  const simulation = lineSimulation(practiceSystem(room.layout, room.seed, room.seat), room);
  return { ...simulation, close: runLine(simulation, speed, onBlock) };
}
