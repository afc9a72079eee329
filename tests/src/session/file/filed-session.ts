import { seededRandom } from '../../../../dsp/signal/random';
import type { SessionDocument } from '../../../../src/session/document';
import type { FiledCapture, SessionFile } from '../../../../src/session/file/session-file';
import { writeWav } from '../../../../src/wav/write-wav';
import { sampleDocument, sampleTake } from '../../../components/sample-session';
import type { EntrySpec } from './zip-bytes';

/** A session with two takes, one with a loopback. */
export const filedSession: SessionDocument = {
  ...sampleDocument('2.0'),
  id: 'a filed session',
  name: 'Attic',
  takes: [
    { ...sampleTake('2.0'), id: 'one', captureId: 'sound 1' },
    { ...sampleTake('2.0'), id: 'two', captureId: 'sound 2', loopbackId: 'sound 2 loopback' },
  ],
};

/** Short seeded recordings of its takes, with a rate of their own each. */
export const filedSound: ReadonlyMap<string, Float32Array> = new Map(
  ['sound 1', 'sound 2', 'sound 2 loopback'].map((id, index) => {
    const random = seededRandom(index + 1);
    return [id, Float32Array.from({ length: 400 + index }, () => random() - 0.5)];
  }),
);

/** Where its recordings lie. */
export const filedCaptures: readonly FiledCapture[] = [...filedSound].map(
  ([id, samples], index) => ({ id, file: `captures/${index + 1}.wav`, frames: samples.length }),
);

/** What session.json of its file says. */
export function filedContent(changes: Partial<Record<keyof SessionFile, unknown>> = {}) {
  return {
    format: 'leadline-session-file',
    version: 1,
    savedAt: '2030-01-01T00:00:00.000Z',
    captures: filedCaptures,
    missing: [],
    session: filedSession,
    ...changes,
  };
}

/** The entries of its file. */
export function filedEntries(content: unknown = filedContent()): EntrySpec[] {
  const sounds = [...filedSound.values()].map((samples, index) => ({
    name: `captures/${index + 1}.wav`,
    data: writeWav({ channels: [samples], sampleRate: 48000, depth: 'float', channelMask: 0 }),
    stored: true,
  }));
  return [...sounds, { name: 'session.json', data: textBytes(JSON.stringify(content)) }];
}

export function textBytes(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}
