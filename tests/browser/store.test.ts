import { deleteDB, openDB } from 'idb';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { SessionDocument } from '../../src/session/document';
import { openStore } from '../../src/session/store';
import { isTrouble } from '../../src/trouble';
import { sampleDocument, sampleTake } from '../components/sample-session';

let name: string;
let count = 0;

beforeEach(() => {
  name = `leadline-test-${count++}`;
});

afterEach(async () => {
  vi.restoreAllMocks();
  await deleteDB(name, { blocked: () => undefined });
});

async function raw(): ReturnType<typeof openDB> {
  return openDB(name);
}

/** Puts a value where the last session lies, past the store. */
async function damage(change: (document: SessionDocument) => unknown): Promise<void> {
  const document = sampleDocument('5.1');
  await openStore(name).save(document);
  const database = await raw();
  await database.put('documents', change(document), document.id);
  database.close();
}

describe('the store in the browser', () => {
  it('has no session at first', async () => {
    expect(await openStore(name).load()).toBeNull();
  });

  it('brings back the session with its takes and readings as it was saved', async () => {
    const document = { ...sampleDocument('5.2.4'), takes: [sampleTake('5.2.4')] };
    expect(await openStore(name).save(document)).toBeNull();
    expect(await openStore(name).load()).toEqual(document);
  });

  it('brings back a session that version 1 stored, and saves it as this version', async () => {
    await damage((document) => ({
      ...document,
      version: 1,
      live: { outputId: 'a1b2', microphoneId: null, gainDb: -21 },
      microphone: undefined,
      take: undefined,
      position: undefined,
      noiseReadings: undefined,
    }));
    const store = openStore(name);
    const loaded = await store.load();
    if (loaded === null || isTrouble(loaded)) throw new Error('it was not brought back');
    expect(loaded).toMatchObject({ version: 2, position: { id: 'seat-1' }, noiseReadings: [] });
    expect(loaded.live.output).toEqual({ id: 'a1b2', name: '' });
    expect(loaded.live.gainDb).toBe(-21);
    expect(await store.save(loaded)).toBeNull();
    expect(await store.load()).toEqual(loaded);
  });

  it('brings back the session saved last', async () => {
    const store = openStore(name);
    await store.save({ ...sampleDocument('5.1'), id: 'first' });
    await store.save({ ...sampleDocument('7.1.4'), id: 'second' });
    await store.save({ ...sampleDocument('5.1'), id: 'first', name: 'Changed' });
    expect(await openStore(name).load()).toMatchObject({ id: 'first', name: 'Changed' });
  });

  it('brings back a capture sample by sample', async () => {
    const samples = Float32Array.from({ length: 48_000 }, (_, index) => Math.sin(index * 0.01));
    expect(await openStore(name).saveCapture('take', samples)).toBeNull();
    const back = await openStore(name).loadCapture('take');
    expect(back).toBeInstanceOf(Float32Array);
    expect(back).toEqual(samples);
  });

  it('has no capture that was never saved', async () => {
    expect(await openStore(name).loadCapture('nothing')).toBeNull();
  });
});

describe('a damaged store', () => {
  it('refuses a session with a number that is none and says where', async () => {
    await damage((document) => ({
      ...document,
      conditions: { ...document.conditions, temperatureCelsius: NaN },
    }));
    const loaded = await openStore(name).load();
    expect(loaded).toMatchObject({ trouble: 'storage' });
    expect(isTrouble(loaded) && loaded.sentence).toContain('conditions.temperatureCelsius');
  });

  it('refuses a layout that means nothing', async () => {
    await damage((document) => ({ ...document, layout: '12.7' }));
    expect(await openStore(name).load()).toMatchObject({ trouble: 'storage' });
  });

  it('refuses a session that lacks a part and says which', async () => {
    await damage((document) => ({ ...document, live: undefined }));
    const loaded = await openStore(name).load();
    expect(isTrouble(loaded) && loaded.sentence).toContain('"live" is missing');
  });

  it('refuses a value that is no session at all', async () => {
    await damage(() => 'not a session');
    expect(await openStore(name).load()).toMatchObject({ trouble: 'storage' });
  });

  it('keeps the damaged session aside, whole, and a later save does not touch it', async () => {
    await damage((document) => ({ ...document, takes: 'gone' }));
    const store = openStore(name);
    await store.load();
    await store.save(sampleDocument('5.1'));
    const database = await raw();
    const aside: unknown[] = await database.getAll('aside');
    database.close();
    expect(aside).toHaveLength(1);
    expect(aside[0]).toMatchObject({ value: { ...sampleDocument('5.1'), takes: 'gone' } });
    expect(await store.load()).toEqual(sampleDocument('5.1'));
  });

  it('keeps a session aside, whole, whose readings are no JSON', async () => {
    await damage((document) => ({
      ...document,
      takes: [{ ...sampleTake('5.1'), readings: '{"format":' }],
    }));
    expect(await openStore(name).load()).toMatchObject({ trouble: 'storage' });
    const database = await raw();
    const aside: unknown[] = await database.getAll('aside');
    database.close();
    expect(aside[0]).toMatchObject({ value: { takes: [{ readings: '{"format":' }] } });
  });

  it('opens a session whose readings were stored as objects, as before version 3', async () => {
    const takes = [sampleTake('5.1')];
    await damage((document) => ({ ...document, takes }));
    expect(await openStore(name).load()).toEqual({ ...sampleDocument('5.1'), takes });
  });

  it('leaves a session of a newer version where it is', async () => {
    await damage((document) => ({ ...document, version: 3 }));
    const store = openStore(name);
    expect(await store.load()).toMatchObject({ trouble: 'storage' });
    await store.save({ ...sampleDocument('5.1'), id: 'fresh' });
    const database = await raw();
    const kept: unknown = await database.get('documents', sampleDocument('5.1').id);
    database.close();
    expect(kept).toMatchObject({ version: 3 });
  });

  it('refuses a capture that holds NaN', async () => {
    const samples = new Float32Array([0, NaN, 1]);
    const database = await openedByTheStore();
    await database.put('captures', samples, 'take');
    database.close();
    expect(await openStore(name).loadCapture('take')).toMatchObject({ trouble: 'storage' });
  });
});

async function openedByTheStore(): ReturnType<typeof openDB> {
  await openStore(name).load();
  return raw();
}

describe('a browser that will not store', () => {
  it('is a trouble that says the room has run out, and the store works again afterwards', async () => {
    const store = openStore(name);
    await store.load();
    const full = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('The quota has been exceeded.', 'QuotaExceededError');
    });
    const problem = await store.save(sampleDocument('5.1'));
    expect(problem).toMatchObject({ trouble: 'storage' });
    expect(problem?.sentence).toContain('no room left');
    full.mockRestore();
    expect(await store.save(sampleDocument('5.1'))).toBeNull();
  });

  it('is a trouble when the database cannot be opened', async () => {
    vi.spyOn(indexedDB, 'open').mockImplementation(() => {
      throw new DOMException('The operation is insecure.', 'SecurityError');
    });
    expect(await openStore(name).load()).toMatchObject({ trouble: 'storage' });
    expect(await openStore(name).saveCapture('take', new Float32Array(1))).toMatchObject({
      trouble: 'storage',
    });
  });

  it('is a trouble for every call until the browser relents, then it saves', async () => {
    const store = openStore(name);
    const open = vi.spyOn(indexedDB, 'open').mockImplementation(() => {
      throw new DOMException('Internal error.', 'UnknownError');
    });
    expect(await store.save(sampleDocument('5.1'))).toMatchObject({ trouble: 'storage' });
    open.mockRestore();
    expect(await store.save(sampleDocument('5.1'))).toBeNull();
  });
});
