import { withLocale } from '../locale/with-locale';
import { breathe } from '../breathe';
import { renderCapture } from './practice-capture';
import type { MicLevel } from './port';
import { systemIn } from './practice-system';
import { renderLoopback } from './practice-loopback';
import type { PracticeAnswer, PracticeOrder, PracticeRecord } from './practice-worker';

export interface PracticeListeners {
  readonly signal: AbortSignal;
  readonly onStep: (position: number) => void;
  readonly onLevel: (level: MicLevel) => void;
}

/**
 * Simulates a take beside the page: in a worker where there are workers, else here with a breath
 * after every step. Null when the signal was aborted, which ends a worker at once. Rejects when
 * the work itself fails.
 */
export function practiceInWorker(
  order: PracticeOrder,
  listeners: PracticeListeners,
): Promise<PracticeRecord | null> {
  return typeof Worker === 'undefined' ? renderHere(order, listeners) : render(order, listeners);
}

function render(
  order: PracticeOrder,
  { signal, onStep, onLevel }: PracticeListeners,
): Promise<PracticeRecord | null> {
  return new Promise((resolve, reject) => {
    const worker = withLocale(
      new Worker(new URL('./practice-worker.ts', import.meta.url), { type: 'module' }),
    );
    const leave = (): void => {
      worker.terminate();
      signal.removeEventListener('abort', abort);
    };
    const abort = (): void => {
      leave();
      resolve(null);
    };
    signal.addEventListener('abort', abort);
    worker.onmessage = ({ data }: MessageEvent<PracticeAnswer>) => {
      if (data.kind === 'step') return onStep(data.position);
      if (data.kind === 'level') return onLevel(data.level);
      leave();
      if (data.kind === 'failed') reject(new Error(data.why));
      else resolve(data.record);
    };
    worker.onerror = (event) => {
      event.preventDefault();
      leave();
      reject(new Error(event.message || 'its worker could not start'));
    };
    worker.postMessage(order);
  });
}

async function renderHere(
  { room, schedule, gainDb }: PracticeOrder,
  { signal, onStep, onLevel }: PracticeListeners,
): Promise<PracticeRecord | null> {
  const { faults, processor = null } = room;
  const system = systemIn(room);
  const samples = await renderCapture(system, schedule, {
    gainDb,
    faults,
    processor,
    onStep: async (position) => {
      if (signal.aborted) return false;
      onStep(position);
      await breathe();
      return !signal.aborted;
    },
    onLevel: (level) => {
      if (!signal.aborted) onLevel(level);
    },
  });
  if (!samples || signal.aborted) return null;
  const loopback = room.loopback ? renderLoopback(system, schedule, { gainDb, faults }) : null;
  return { samples, loopback };
}
