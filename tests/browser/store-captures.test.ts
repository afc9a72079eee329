import { deleteDB, openDB, type IDBPDatabase } from 'idb';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { openStore } from '../../src/session/store';
import { sampleDocument, sampleTake } from '../components/sample-session';

let name: string;
let count = 0;

beforeEach(() => {
  name = `leadline-captures-${count++}`;
});

afterEach(async () => {
  vi.restoreAllMocks();
  await deleteDB(name, { blocked: () => undefined });
});

/** Two megabytes and a half: more than two pieces. */
const sound = Float32Array.from({ length: 650_001 }, (_, index) => Math.sin(index * 0.01));

/** Works on the tables past the store. */
async function past<T>(work: (database: IDBPDatabase) => Promise<T>): Promise<T> {
  await openStore(name).load();
  const database = await openDB(name);
  try {
    return await work(database);
  } finally {
    database.close();
  }
}

const rows = (): Promise<number[]> =>
  past((database) => Promise.all([database.count('captures'), database.count('pieces')]));

/** Whether two captures are alike; `toEqual` takes seconds for as many numbers. */
function alike(one: unknown, other: Float32Array): boolean {
  if (!(one instanceof Float32Array) || one.length !== other.length) return false;
  return one.every((value, index) => Object.is(value, other[index]));
}

/** Does something before each put into a table. */
function onPut(before: (table: string, value: unknown) => void): void {
  const { put } = IDBObjectStore.prototype;
  vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (
    this: IDBObjectStore,
    ...values
  ) {
    before(this.name, values[0]);
    return put.apply(this, values);
  });
}

describe('a long capture in the store', () => {
  it('comes back sample by sample to the next page', async () => {
    expect(await openStore(name).saveCapture('take', sound)).toBeNull();
    expect(alike(await openStore(name).loadCapture('take'), sound)).toBe(true);
  });

  it('is handed over in pieces of a megabyte, each in a task of its own', async () => {
    const store = openStore(name);
    await store.load();
    const bytes: number[] = [];
    let inTask = 0;
    let most = 0;
    onPut((_, value) => {
      if (value instanceof Float32Array) bytes.push(value.buffer.byteLength);
      most = Math.max(most, ++inTask);
      // A message comes as a task of its own, after all that is left of this one.
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => (inTask = 0);
      port2.postMessage(null);
    });
    await store.saveCapture('take', sound);
    expect(bytes).toEqual([2 ** 20, 2 ** 20, 4 * sound.length - 2 ** 21]);
    expect(most).toBe(1);
  });

  it('is cut out of a longer buffer as it was', async () => {
    const part = sound.subarray(1000, 400_000);
    await openStore(name).saveCapture('take', part);
    expect(alike(await openStore(name).loadCapture('take'), part)).toBe(true);
  });

  it('takes the place of another of its id, whole, and of one without samples', async () => {
    const store = openStore(name);
    await store.saveCapture('take', sound);
    await store.saveCapture('take', sound.subarray(0, 10));
    expect(await store.loadCapture('take')).toEqual(sound.slice(0, 10));
    expect(await rows()).toEqual([1, 1]);
    await store.saveCapture('take', new Float32Array(0));
    expect(await store.loadCapture('take')).toEqual(new Float32Array(0));
    expect(await rows()).toEqual([1, 0]);
  });

  it('keeps apart from one whose id begins alike', async () => {
    const store = openStore(name);
    const other = sound.map((value) => -value);
    await store.saveCapture('take', sound);
    await store.saveCapture('take 2', other);
    await store.removeCaptures(['take']);
    expect(await store.loadCapture('take')).toBeNull();
    expect(alike(await store.loadCapture('take 2'), other)).toBe(true);
    expect(await rows()).toEqual([1, 3]);
  });

  it('goes with the last session that names it, all of its pieces', async () => {
    const store = openStore(name);
    await store.saveCapture('sound', sound);
    const takes = [{ ...sampleTake('5.1'), captureId: 'sound' }];
    await store.save({ ...sampleDocument('5.1'), id: 'a', takes });
    await store.save({ ...sampleDocument('5.1'), id: 'copy', takes });
    await store.save({ ...sampleDocument('5.1'), id: 'other' });
    await store.remove('a', new Set(), true);
    expect(alike(await store.loadCapture('sound'), sound)).toBe(true);
    await store.remove('copy', new Set(), true);
    expect(await rows()).toEqual([0, 0]);
  });
});

describe('a capture that was not stored to its end', () => {
  it('leaves nothing when a piece is refused, and says why', async () => {
    let pieces = 0;
    onPut((table) => {
      if (table !== 'pieces' || ++pieces < 3) return;
      throw new DOMException('The quota has been exceeded.', 'QuotaExceededError');
    });
    const problem = await openStore(name).saveCapture('take', sound);
    expect(problem?.sentence).toContain('no room left');
    vi.restoreAllMocks();
    expect(await rows()).toEqual([0, 0]);
    expect(await openStore(name).loadCapture('take')).toBeNull();
  });

  it('leaves nothing when its page goes away half way', async () => {
    await openStore(name).load();
    const worker = new Worker(new URL('./save-half.ts', import.meta.url), { type: 'module' });
    const half = new Promise<unknown>((resolve, reject) => {
      worker.onmessage = ({ data }) => resolve(data);
      worker.onerror = ({ message }) => reject(new Error(message));
    });
    worker.postMessage(name);
    expect(await half).toBe('half');
    worker.terminate();
    expect(await rows()).toEqual([0, 0]);
    expect(await openStore(name).loadCapture('take')).toBeNull();
  });

  it('is damaged, not shorter, where a piece of it is lost', async () => {
    for (const lost of [0, 1, 2]) {
      await openStore(name).saveCapture('take', sound);
      await past((database) => database.delete('pieces', ['take', lost]));
      expect(await openStore(name).loadCapture('take')).toMatchObject({ trouble: 'storage' });
    }
  });

  it('is damaged where a piece holds what is no number, or too much', async () => {
    const wrong = [new Float32Array([NaN]), new Float32Array(300_000), [1, 2], 'sound'];
    for (const value of wrong) {
      await openStore(name).saveCapture('take', sound);
      await past((database) => database.put('pieces', value, ['take', 2]));
      expect(await openStore(name).loadCapture('take')).toMatchObject({ trouble: 'storage' });
    }
  });

  it('is damaged where its length is none', async () => {
    for (const head of [{}, { frames: -1 }, { frames: 1e15 }, { frames: 0.5 }, 'long', null]) {
      await openStore(name).saveCapture('take', sound);
      await past((database) => database.put('captures', head, 'take'));
      expect(await openStore(name).loadCapture('take')).toMatchObject({ trouble: 'storage' });
    }
  });
});

describe('captures of version 4', () => {
  beforeEach(async () => {
    const database = await openDB(name, 4, {
      upgrade(fresh) {
        for (const table of ['documents', 'captures', 'meta', 'summaries', 'readings']) {
          fresh.createObjectStore(table);
        }
        fresh.createObjectStore('aside', { autoIncrement: true });
      },
    });
    await database.put('captures', sound, 'sound');
    await database.put('captures', sound, 'other');
    const takes = [{ ...sampleTake('5.1'), captureId: 'sound', readings: null }];
    await database.put('documents', { ...sampleDocument('5.1'), id: 'a', takes }, 'a');
    await database.put('meta', 'a', 'last session');
    database.close();
  });

  it('lie as they lay and are heard as before', async () => {
    const store = openStore(name);
    expect(await store.load()).toMatchObject({ id: 'a', takes: [{ captureId: 'sound' }] });
    expect(alike(await store.loadCapture('sound'), sound)).toBe(true);
    expect(await rows()).toEqual([2, 0]);
  });

  it('stay with what names them, and go with it', async () => {
    const store = openStore(name);
    await store.remove(null, new Set());
    expect(await past((database) => database.getAllKeys('captures'))).toEqual(['sound']);
    await store.save({ ...sampleDocument('5.1'), id: 'b' });
    await store.remove('a', new Set(), true);
    expect(await rows()).toEqual([0, 0]);
  });
});
