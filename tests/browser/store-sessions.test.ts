import { deleteDB, openDB, type IDBPDatabase } from 'idb';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { SessionDocument } from '../../src/session/document';
import type { StoredSession } from '../../src/session/shelf/stored-session';
import { openStore } from '../../src/session/store';
import { isTrouble } from '../../src/trouble';
import { sampleDocument, sampleTake } from '../components/sample-session';

let name: string;
let count = 0;

beforeEach(() => {
  name = `leadline-test-sessions-${count++}`;
});

afterEach(async () => {
  vi.useRealTimers();
  vi.restoreAllMocks();
  await deleteDB(name, { blocked: () => undefined });
});

function session(id: string, changes: Partial<SessionDocument> = {}): SessionDocument {
  return { ...sampleDocument('5.1'), id, name: `Room ${id}`, ...changes };
}

/** A session with one take, whose recording is `captureId`. */
function probed(id: string, captureId: string): SessionDocument {
  return session(id, { takes: [{ ...sampleTake('5.1'), captureId }] });
}

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

async function list(): Promise<readonly StoredSession[]> {
  const found = await openStore(name).list();
  if (isTrouble(found)) throw new Error(found.sentence);
  return found;
}

const names = (found: readonly StoredSession[]): string[] => found.map((one) => one.id);

async function captureIds(): Promise<unknown[]> {
  return past((database) => database.getAllKeys('captures'));
}

describe('a database of the version before', () => {
  const samples = Float32Array.from({ length: 1000 }, (_, index) => Math.sin(index));
  const older = session('older', { createdAt: '2024-05-01T00:00:00.000Z' });
  const newer = { ...probed('newer', 'sound'), createdAt: '2025-05-01T00:00:00.000Z' };

  beforeEach(async () => {
    const database = await openDB(name, 1, {
      upgrade(fresh) {
        fresh.createObjectStore('documents');
        fresh.createObjectStore('captures');
        fresh.createObjectStore('aside', { autoIncrement: true });
        fresh.createObjectStore('meta');
      },
    });
    await database.put('documents', older, older.id);
    await database.put('documents', newer, newer.id);
    await database.put('captures', samples, 'sound');
    await database.add('aside', { keptAt: '', why: 'invented', value: 'something' });
    await database.put('meta', older.id, 'last session');
    database.close();
  });

  it('keeps all it held', async () => {
    const store = openStore(name);
    expect(await store.load()).toEqual(older);
    expect(await store.read('newer')).toEqual(newer);
    expect(await store.loadCapture('sound')).toEqual(samples);
    const aside = await past((database) => database.getAll('aside'));
    expect(aside).toEqual([{ keptAt: '', why: 'invented', value: 'something' }]);
  });

  it('lists its sessions by the day they were begun, then as they are changed', async () => {
    expect(names(await list())).toEqual(['newer', 'older']);
    expect((await list())[0]?.summary).toMatchObject({ progress: 'probed', takes: 1 });
    await openStore(name).save({ ...older, name: 'Changed' });
    expect((await list()).map((one) => one.name)).toEqual(['Changed', 'Room newer']);
  });

  it('loses nothing when the deleted are removed', async () => {
    expect(await openStore(name).remove(null, new Set())).toBeNull();
    expect(names(await list())).toEqual(['newer', 'older']);
    expect(await captureIds()).toEqual(['sound']);
  });
});

describe('the list of sessions', () => {
  it('is empty at first', async () => expect(await list()).toEqual([]));

  it('follows the order of changes, also when the clock was set back', async () => {
    vi.useFakeTimers({ toFake: ['Date'] });
    const store = openStore(name);
    vi.setSystemTime('2031-06-01T12:00:00Z');
    await store.save(session('a'));
    vi.setSystemTime('1971-06-01T12:00:00Z');
    await store.save(session('b'));
    vi.setSystemTime('2001-06-01T12:00:00Z');
    await store.save(session('c'));
    await store.save(session('a', { name: 'Changed again' }));
    expect(names(await list())).toEqual(['a', 'c', 'b']);
    expect(await openStore(name).load()).toMatchObject({ id: 'a' });
  });

  it('is made again from the sessions where it is lost or damaged', async () => {
    const store = openStore(name);
    await store.save(session('a'));
    await store.save(session('b'));
    await past(async (database) => {
      await database.delete('summaries', 'a');
      await database.put('summaries', { name: 7 }, 'b');
    });
    expect(new Set(names(await list()))).toEqual(new Set(['a', 'b']));
    expect((await list()).every(({ summary }) => summary?.layout === '5.1')).toBe(true);
  });

  it('shows what cannot be opened and why, and leaves it where it is', async () => {
    await openStore(name).save(session('good'));
    const damaged = { ...session('damaged'), takes: 'gone' };
    const newer = { ...session('newer'), version: 99 };
    await past(async (database) => {
      await database.put('documents', damaged, 'damaged');
      await database.put('documents', newer, 'newer');
    });
    const found = new Map((await list()).map((one) => [one.id, one]));
    expect(found.get('damaged')).toMatchObject({ name: 'Room damaged', summary: null });
    expect(found.get('damaged')?.problem).toContain('takes');
    expect(found.get('newer')?.problem).toContain('newer Leadline');
    expect(await openStore(name).read('damaged')).toMatchObject({ trouble: 'storage' });
    const kept = await past((database) => database.get('documents', 'damaged'));
    expect(kept).toEqual(damaged);
  });

  it('has a session saved beside the one last worked on, which stays that', async () => {
    const store = openStore(name);
    await store.save(session('a'));
    await store.save(session('b'), false);
    expect(await openStore(name).load()).toMatchObject({ id: 'a' });
    await store.makeLast('b');
    expect(await openStore(name).load()).toMatchObject({ id: 'b' });
  });

  it('agrees with the sessions also when saving breaks off half way', async () => {
    const store = openStore(name);
    await store.save(session('a'));
    const { put } = IDBObjectStore.prototype;
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (
      this: IDBObjectStore,
      ...values
    ) {
      if (this.name === 'summaries') throw new DOMException('Full.', 'QuotaExceededError');
      return put.apply(this, values);
    });
    expect(await store.save(session('a', { name: 'Lost' }))).toMatchObject({ trouble: 'storage' });
    vi.restoreAllMocks();
    expect(await openStore(name).read('a')).toMatchObject({ name: 'Room a' });
    expect((await list())[0]?.name).toBe('Room a');
  });
});

describe('a session marked as deleted', () => {
  it('is still there for the next page, and back when the mark is taken off', async () => {
    const store = openStore(name);
    await store.save(session('a'));
    await store.markDeleted('a', true);
    expect(await list()).toMatchObject([{ id: 'a', deleted: true }]);
    expect(await openStore(name).read('a')).toEqual(session('a'));
    await openStore(name).markDeleted('a', false);
    expect(await list()).toMatchObject([{ id: 'a', deleted: false }]);
  });

  it('is removed with its recordings, those of others stay', async () => {
    const store = openStore(name);
    for (const id of ['one', 'shared', 'two', 'kept', 'nobody’s']) {
      await store.saveCapture(id, new Float32Array(4));
    }
    await store.save(probed('a', 'one'));
    await store.save(probed('b', 'shared'));
    await store.save(probed('copy of b', 'shared'));
    await store.save(probed('c', 'two'));
    await store.markDeleted('a', true);
    await store.markDeleted('b', true);
    expect(await store.remove(null, new Set(['kept']))).toBeNull();
    expect(new Set(names(await list()))).toEqual(new Set(['copy of b', 'c']));
    expect(await captureIds()).toEqual(['kept', 'shared', 'two']);
  });

  it('is removed alone when it is named', async () => {
    const store = openStore(name);
    await store.save(session('a'));
    await store.save(session('b'));
    await store.save(session('c'));
    await store.markDeleted('a', true);
    await store.markDeleted('b', true);
    await store.remove('a', new Set());
    expect(await list()).toMatchObject([
      { id: 'c', deleted: false },
      { id: 'b', deleted: true },
    ]);
  });

  it('is not removed while it is the one last worked on', async () => {
    const store = openStore(name);
    await store.save(session('a'));
    await store.markDeleted('a', true);
    await store.remove(null, new Set());
    expect(await openStore(name).load()).toEqual(session('a'));
  });

  it('leaves the recordings of sessions that cannot be read, and of those kept aside', async () => {
    const store = openStore(name);
    for (const id of ['of the newer', 'of the damaged', 'aside']) {
      await store.saveCapture(id, new Float32Array(4));
    }
    await past(async (database) => {
      const newer = { version: 99, sounds: { deep: [{ inside: 'of the newer' }] } };
      await database.put('documents', newer, 'newer');
      await database.put('documents', { takes: 'of the damaged' }, 'damaged');
      await database.add('aside', { keptAt: '', why: '', value: probed('x', 'aside') });
    });
    await store.remove(null, new Set());
    expect(await captureIds()).toEqual(['aside', 'of the damaged', 'of the newer']);
  });

  it('stays whole when removing breaks off', async () => {
    const store = openStore(name);
    await store.saveCapture('one', new Float32Array(4));
    await store.save(probed('a', 'one'));
    await store.save(session('b'));
    await store.markDeleted('a', true);
    vi.spyOn(IDBObjectStore.prototype, 'getAllKeys').mockImplementation(() => {
      throw new DOMException('Broken.', 'UnknownError');
    });
    expect(await store.remove(null, new Set())).toMatchObject({ trouble: 'storage' });
    vi.restoreAllMocks();
    expect(await openStore(name).read('a')).toEqual(probed('a', 'one'));
    expect(await captureIds()).toEqual(['one']);
  });
});
