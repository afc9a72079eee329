import type { ChannelReading, Readings } from '../reading/reading';
import type { Capture, Rig } from '../rig/port';
import type { Layout } from '../system/channel';
import type { Schedule } from '../take/schedule';
import type { Trouble } from '../trouble';
import type { SessionDocument } from './document';
import type { SessionStore } from './session-store';

export interface ReadOptions {
  readonly temperatureCelsius: number;
  readonly referenceDistanceMetres: number;
  readonly simulated: boolean;
  readonly signal: AbortSignal;
  readonly onChannel: (reading: ChannelReading, progress: number) => void;
}

/** What a bench is put together from; tests bring their own. */
export interface BenchParts {
  readonly store: SessionStore;
  makeRig(document: SessionDocument, layout: Layout): Promise<Rig | Trouble>;
  read(
    schedule: Schedule,
    capture: Pick<Capture, 'samples' | 'sampleRate'>,
    options: ReadOptions,
  ): Promise<Readings | Trouble>;
  takeFiles(schedule: Schedule, layout: Layout): Promise<{ name: string; blob: Blob }[]>;
  readRecording(bytes: Uint8Array, schedule: Schedule): Capture | Trouble;
  newId(): string;
  now(): string;
}
