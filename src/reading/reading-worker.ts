import '../locale/hear-locale';
import { helpersInWorkers } from './helpers-in-workers';
import type { TakeCapture } from './ground-take';
import { readTake, type ReadTakeOptions } from './read-take';
import type { ChannelReading, Readings } from './reading';
import { readingFailed } from './reading-troubles';
import type { Schedule } from '../take/schedule';
import type { Trouble } from '../trouble';

/** What the page sends: one take to read. */
export interface ReadingOrder {
  readonly schedule: Schedule;
  readonly capture: TakeCapture;
  readonly options: Pick<
    ReadTakeOptions,
    | 'temperatureCelsius'
    | 'referenceDistanceMetres'
    | 'simulated'
    | 'calibration'
    | 'inForce'
    | 'close'
  >;
}

/** What the worker answers: each channel as it is read, then everything. */
export type ReadingAnswer =
  | { readonly kind: 'channel'; readonly reading: ChannelReading; readonly progress: number }
  | { readonly kind: 'done'; readonly result: Readings | Trouble };

const helpers = helpersInWorkers();

self.onmessage = async (event: MessageEvent<ReadingOrder>): Promise<void> => {
  const answer = (message: ReadingAnswer): void => self.postMessage(message);
  const { schedule, capture, options } = event.data;
  try {
    const result = await readTake(schedule, capture, {
      ...options,
      helpers,
      onChannel: (reading, progress) => answer({ kind: 'channel', reading, progress }),
    });
    answer({ kind: 'done', result });
  } catch (error) {
    // A rejection here would never reach the page's onerror.
    const why = error instanceof Error ? error.message : String(error);
    answer({ kind: 'done', result: readingFailed(why) });
  }
};
