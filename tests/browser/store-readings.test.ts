import { deleteDB, openDB, type IDBPDatabase } from 'idb';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { SessionDocument } from '../../src/session/document';
import { openStore } from '../../src/session/store';
import { isTrouble } from '../../src/trouble';
import { sampleDocument, sampleTake } from '../components/sample-session';

let name: string;
let count = 0;

beforeEach(() => {
  name = `leadline-readings-${count++}`;
});

afterEach(async () => {
  vi.restoreAllMocks();
  await deleteDB(name, { blocked: () => undefined });
});

/** A session with one take that was read. */
const probed = (id: string): SessionDocument => ({
  ...sampleDocument('5.1'),
  id,
  takes: [sampleTake('5.1')],
});

async function past<T>(look: (database: IDBPDatabase) => Promise<T>): Promise<T> {
  const database = await openDB(name);
  const found = await look(database);
  database.close();
  return found;
}

const rows = () => past((database) => database.count('readings'));

async function read(id: string): Promise<SessionDocument> {
  const found = await openStore(name).read(id);
  if (found === null || isTrouble(found)) throw new Error('it was not brought back');
  return found;
}

describe('readings in the store', () => {
  it('lie beside their session, and are not written again as the session changes', async () => {
    const store = openStore(name);
    const document = probed('a');
    await store.save(document);
    const put = vi.spyOn(IDBObjectStore.prototype, 'put');
    await store.save({ ...document, name: 'Changed' });
    const written = put.mock.contexts.map((table) => (table as IDBObjectStore).name);
    expect(written).toContain('documents');
    expect(written).not.toContain('readings');
    const stored = await past((database) => database.get('documents', 'a') as Promise<unknown>);
    expect(stored).toMatchObject({
      takes: [{ readings: { kept: expect.any(String) as unknown } }],
    });
    expect(await rows()).toBe(1);
    expect(await read('a')).toEqual({ ...document, name: 'Changed' });
  });

  it('are not written again by the page after', async () => {
    await openStore(name).save(probed('a'));
    const found = await read('a');
    await openStore(name).save({ ...found, name: 'Changed' });
    expect(await rows()).toBe(1);
  });

  it('come from a session of version 3, whose texts stood in it, and lie beside it after', async () => {
    const document = probed('a');
    await openStore(name).load();
    await past((database) =>
      database.put(
        'documents',
        {
          ...document,
          takes: document.takes.map((take) => ({
            ...take,
            readings: JSON.stringify(take.readings),
          })),
        },
        'a',
      ),
    );
    const found = await read('a');
    expect(found).toEqual(document);
    await openStore(name).save(found);
    expect(await rows()).toBe(1);
    expect(await read('a')).toEqual(document);
  });

  it('leave their take without any where they are lost: its recording is read again', async () => {
    await openStore(name).save(probed('a'));
    await past((database) => database.clear('readings'));
    expect(await read('a')).toEqual({
      ...probed('a'),
      takes: [{ ...sampleTake('5.1'), readings: null }],
    });
  });

  it('are kept with a session that is set aside', async () => {
    const store = openStore(name);
    await store.save(probed('a'));
    await past(async (database) => {
      const stored = (await database.get('documents', 'a')) as object;
      await database.put('documents', { ...stored, rig: 'none' }, 'a');
    });
    expect(await store.load()).toMatchObject({ trouble: 'storage' });
    const aside = await past((database) => database.getAll('aside') as Promise<unknown[]>);
    expect(aside).toMatchObject([
      { value: { takes: [{ readings: JSON.stringify(sampleTake('5.1').readings) }] } },
    ]);
  });

  it('go with the last session that names them, and come back when one does again', async () => {
    const store = openStore(name);
    const document = probed('a');
    await store.save(document);
    await store.save({ ...document, id: 'copy' });
    expect(await rows()).toBe(1);
    await store.remove('a', new Set(), true);
    expect(await rows()).toBe(1);
    await store.save({ ...document, id: 'copy', takes: [] });
    await store.save({ ...sampleDocument('5.1'), id: 'other' });
    await store.remove('copy', new Set(), true);
    expect(await rows()).toBe(0);
    await store.save({ ...document, id: 'copy' });
    expect(await rows()).toBe(1);
    expect(await read('copy')).toEqual({ ...document, id: 'copy' });
  });

  it('are stored with their session or not at all', async () => {
    const store = openStore(name);
    await store.save({ ...probed('a'), takes: [] });
    const { put } = IDBObjectStore.prototype;
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (
      this: IDBObjectStore,
      ...values
    ) {
      if (this.name === 'documents') throw new DOMException('Full.', 'QuotaExceededError');
      return put.apply(this, values);
    });
    expect(await store.save(probed('a'))).toMatchObject({ trouble: 'storage' });
    vi.restoreAllMocks();
    expect(await rows()).toBe(0);
    expect((await read('a')).takes).toEqual([]);
  });
});
