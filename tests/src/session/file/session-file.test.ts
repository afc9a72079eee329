import { unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import type { SessionDocument } from '../../../../src/session/document';
import { placeSession } from '../../../../src/session/file/place-session';
import { readSessionFile } from '../../../../src/session/file/read-session-file';
import { sessionFileName } from '../../../../src/session/file/session-file';
import { writeSessionFile } from '../../../../src/session/file/write-session-file';
import { isTrouble, trouble } from '../../../../src/trouble';
import { readWav } from '../../../../src/wav/read-wav';
import { memoryStore } from '../memory-store';
import {
  filedCaptures,
  filedContent,
  filedEntries,
  filedSession,
  filedSound,
} from './filed-session';
import { zipBytes } from './zip-bytes';

const { signal } = new AbortController();
const quiet = { signal, onProgress: () => undefined };
const options = { ...quiet, savedAt: '2030-01-01T00:00:00.000Z' };

function storeWithSound() {
  const made = memoryStore();
  for (const [id, samples] of filedSound) made.held.captures.set(id, samples);
  return made;
}

async function written(document = filedSession, store = storeWithSound().store): Promise<Blob> {
  const blob = await writeSessionFile(document, store, options);
  if (isTrouble(blob)) throw new Error(blob.sentence);
  return blob;
}

/** Opens a file into a store; the session as it was placed. */
async function placed(file: Blob, made = memoryStore()) {
  let ids = 0;
  const opened = await readSessionFile(file, signal);
  if (isTrouble(opened)) throw new Error(opened.sentence);
  const newId = () => `new id ${++ids}`;
  const result = await placeSession(made.store, opened, { ...quiet, newId });
  if (isTrouble(result)) throw new Error(result.sentence);
  return { ...made, document: result.document };
}

describe('a session file', () => {
  it('holds the session as JSON and each recording as a WAV that other programs read', async () => {
    const entries = unzipSync(new Uint8Array(await (await written()).arrayBuffer()));
    expect(Object.keys(entries).sort()).toEqual([
      'captures/1.wav',
      'captures/2.wav',
      'captures/3.wav',
      'session.json',
    ]);
    const text = new TextDecoder().decode(entries['session.json']);
    expect(JSON.parse(text)).toEqual(filedContent());
    const wav = readWav(entries['captures/2.wav'] ?? new Uint8Array());
    if (isTrouble(wav)) throw new Error(wav.sentence);
    expect(wav).toMatchObject({ sampleRate: 48000, bits: 32, coding: 'float', frames: 401 });
    expect(wav.channels).toEqual([filedSound.get('sound 2')]);
  });

  it('comes back as it was, sample by sample', async () => {
    const { document, held } = await placed(await written());
    expect(document).toEqual(filedSession);
    expect(held.captures).toEqual(filedSound);
    expect(held.sessions.get(document.id)).toEqual(filedSession);
  });

  it('is the same whatever the clock says, years before 1980 too', async () => {
    const now = Date.now;
    const one = await written();
    try {
      Date.now = () => -1e12;
      const other = await written();
      expect(await other.arrayBuffer()).toEqual(await one.arrayBuffer());
    } finally {
      Date.now = now;
    }
  });

  it('opens when another program has packed it anew', async () => {
    const deflated = filedEntries().map((entry) => ({ ...entry, stored: false }));
    const { document, held } = await placed(new Blob([zipBytes(deflated, { comment: 'packed' })]));
    expect(document).toEqual(filedSession);
    expect(held.captures).toEqual(filedSound);
  });

  it('opens with a session of the version before', async () => {
    const { document } = await placed(
      new Blob([
        zipBytes(
          filedEntries(
            filedContent({
              session: {
                ...filedSession,
                version: 1,
                live: { outputId: 'a1b2', microphoneId: null, gainDb: -21 },
                takes: filedSession.takes.map(({ position: { name, kind }, ...take }) => ({
                  ...take,
                  position: { name, kind },
                })),
              },
              captures: filedCaptures.slice(0, 2),
            }),
          ).filter(({ name }) => name !== 'captures/3.wav'),
        ),
      ]),
    );
    expect(document.version).toBe(2);
    expect(document.live.output).toEqual({ id: 'a1b2', name: '' });
    expect(document.takes.map(({ loopbackId }) => loopbackId)).toEqual([null, null]);
  });

  it('names the recordings that were lost before, and opens without them', async () => {
    const { store, held } = storeWithSound();
    held.captures.delete('sound 1');
    const damaged = {
      loadCapture: (id: string) =>
        id === 'sound 2'
          ? Promise.resolve(trouble('storage', 'It is damaged.'))
          : store.loadCapture(id),
    };
    const blob = await writeSessionFile(filedSession, damaged, options);
    if (isTrouble(blob)) throw new Error(blob.sentence);
    const opened = await placed(blob);
    expect(opened.document).toEqual(filedSession);
    expect([...opened.held.captures.keys()]).toEqual(['sound 2 loopback']);
  });

  it('of a session without takes is whole, too', async () => {
    const document: SessionDocument = { ...filedSession, takes: [] };
    expect((await placed(await written(document))).document).toEqual(document);
  });

  it('is not made when it is stopped', async () => {
    const stopped = AbortSignal.abort();
    const blob = await writeSessionFile(filedSession, storeWithSound().store, {
      ...options,
      signal: stopped,
    });
    expect(blob).toMatchObject({ trouble: 'stopped' });
  });

  it('is named after its session, without what file systems refuse', () => {
    expect(sessionFileName('Garden room')).toBe('Garden room.leadline.zip');
    expect(sessionFileName('../a\\b:c*?"<>|\u0000')).toBe('a b c.leadline.zip');
    expect(sessionFileName('Küche № 2')).toBe('Küche 2.leadline.zip');
    expect(sessionFileName('///')).toBe('session.leadline.zip');
    expect(sessionFileName('x'.repeat(200)).length).toBeLessThan(80);
  });
});

describe('a session file opened beside others', () => {
  it('is the session that is there already when both are alike', async () => {
    const made = storeWithSound();
    await made.store.save(filedSession);
    await made.store.markDeleted(filedSession.id, true);
    const { document, held } = await placed(await written(), made);
    expect(document.id).toBe(filedSession.id);
    expect(held.sessions.size).toBe(1);
    expect(held.captures.size).toBe(filedSound.size);
    expect(held.deleted.size).toBe(0);
  });

  it('gets a new id when another session has its own, which stays as it is', async () => {
    const made = storeWithSound();
    const mine = { ...filedSession, name: 'Mine' };
    await made.store.save(mine);
    const { document, held } = await placed(await written(), made);
    expect(document).toEqual({ ...filedSession, id: 'new id 1' });
    expect(held.sessions.get(mine.id)).toBe(mine);
    expect(held.captures.size).toBe(filedSound.size);
  });

  it('never overwrites a recording: another one of the same name gets a new one', async () => {
    const made = memoryStore();
    const mine = new Float32Array(400).fill(0.25);
    made.held.captures.set('sound 1', mine);
    const { document, held } = await placed(await written(), made);
    expect(held.captures.get('sound 1')).toBe(mine);
    const [one, two] = document.takes;
    expect(held.captures.get(one?.captureId ?? '')).toEqual(filedSound.get('sound 1'));
    expect(two?.captureId).toBe('sound 2');
  });

  it('brings back a recording that the session there has lost', async () => {
    const made = storeWithSound();
    await made.store.save(filedSession);
    const file = await written();
    made.held.captures.delete('sound 2');
    const { document, held } = await placed(file, made);
    expect(document.id).toBe(filedSession.id);
    expect(held.captures.get('sound 2')).toEqual(filedSound.get('sound 2'));
  });

  it('leaves nothing behind when its last recording is damaged', async () => {
    const entries = filedEntries();
    const broken = entries.map((entry) =>
      entry.name === 'captures/3.wav' ? { ...entry, crc: 1 } : entry,
    );
    const opened = await readSessionFile(new Blob([zipBytes(broken)]), signal);
    if (isTrouble(opened)) throw new Error(opened.sentence);
    const { store, held } = memoryStore();
    const result = await placeSession(store, opened, { ...quiet, newId: () => 'id' });
    expect(result).toMatchObject({ trouble: 'bad-file' });
    expect(held.captures.size).toBe(0);
    expect(held.sessions.size).toBe(0);
  });

  it('leaves nothing behind when it is stopped on the way', async () => {
    const opened = await readSessionFile(await written(), signal);
    if (isTrouble(opened)) throw new Error(opened.sentence);
    const { store, held } = memoryStore();
    const stop = new AbortController();
    const onProgress = (progress: number) => progress > 0.5 && stop.abort();
    const result = await placeSession(store, opened, {
      newId: () => 'id',
      signal: stop.signal,
      onProgress,
    });
    expect(result).toMatchObject({ trouble: 'stopped' });
    expect(held.captures.size).toBe(0);
    expect(held.sessions.size).toBe(0);
  });
});
