import '../locale/hear-locale';
import { helpersInWorkers } from './helpers-in-workers';
import { gatherSounds, type SoundPiece } from '../send-sound';
import { readTake, type ReadTakeOptions } from './read-take';
import type { ChannelReading, Readings } from './reading';
import { readingFailed } from './reading-troubles';
import type { Schedule } from '../take/schedule';
import type { Trouble } from '../trouble';

/** What the page sends: the sound of one take in pieces, then how to read it. */
export type ReadingMessage = SoundPiece | ReadingOrder;

/** A take to read, whose sounds `samples` and `loopback` were sent before. */
interface ReadingOrder {
  readonly kind: 'read';
  readonly schedule: Schedule;
  readonly sampleRate: number;
  readonly hasLoopback: boolean;
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
const sounds = gatherSounds();

self.onmessage = async ({ data }: MessageEvent<ReadingMessage>): Promise<void> => {
  const answer = (message: ReadingAnswer): void => self.postMessage(message);
  try {
    if (data.kind === 'sound') return sounds.add(data);
    const { schedule, sampleRate, hasLoopback, options } = data;
    const samples = sounds.take('samples');
    const loopback = hasLoopback ? sounds.take('loopback') : null;
    const capture = { samples, sampleRate, loopback };
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
