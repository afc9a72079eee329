import type { HelperAnswer, HelperOrder } from './helper-worker';
import type { MarkBand } from '../../dsp/timing/mark-band';
import type { ReadingHelper } from './read-together';
import type { ChannelReading } from './reading';

/** What a helper needs of a worker that runs helper-worker. */
export interface HelperWorker {
  postMessage(order: HelperOrder, options: { transfer: Transferable[] }): void;
  onmessage: ((event: MessageEvent<HelperAnswer>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

interface Waiting {
  /** False when it is not what was asked for. */
  take(answer: HelperAnswer): boolean;
  reject(why: Error): void;
}

/** A helper that reads in a worker, channels in the order they are asked for. */
export function helperInWorker(worker: HelperWorker): ReadingHelper {
  const waiting: Waiting[] = [];
  let broken: Error | null = null;
  const order = (what: HelperOrder, give: Transferable[] = []): void =>
    worker.postMessage(what, { transfer: give });
  worker.onmessage = ({ data }: MessageEvent<HelperAnswer>) => {
    const first = waiting.shift();
    if (first?.take(data) === false) {
      first.reject(new Error('failed' in data ? data.failed : 'another answer was due'));
    }
  };
  worker.onerror = (event) => {
    event.preventDefault();
    broken = new Error(event.message || 'a worker could not start');
    for (const one of waiting.splice(0)) one.reject(broken);
  };
  const ask = <T>(
    what: HelperOrder,
    give: Transferable,
    pick: (answer: HelperAnswer) => T | false,
  ): Promise<T> =>
    new Promise((resolve, reject) => {
      if (broken) return reject(broken);
      const take = (answer: HelperAnswer): boolean => {
        const picked = pick(answer);
        if (picked === false) return false;
        resolve(picked);
        return true;
      };
      waiting.push({ take, reject });
      order(what, [give]);
    });
  return {
    begin: (take) => order({ kind: 'take', take }),
    setFrame: (frame) => order({ kind: 'frame', frame }),
    read: (label, piece) =>
      ask<ChannelReading>(
        { kind: 'channel', label, piece },
        piece.samples.buffer,
        (answer) => 'reading' in answer && answer.reading,
      ),
    band: (piece) =>
      ask<MarkBand>(
        { kind: 'band', piece },
        piece.samples.buffer,
        (answer) => 'band' in answer && answer.band,
      ),
  };
}
