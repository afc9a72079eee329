import { deleteDB } from 'idb';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { SessionDocument } from '../../src/session/document';
import { openStore } from '../../src/session/store';
import { isTrouble } from '../../src/trouble';
import { sampleDocument, sampleTake } from '../components/sample-session';
import { makeBench } from '../src/session/make-bench';

let name: string;
let count = 0;

beforeEach(() => {
  name = `leadline-test-file-${count++}`;
});

afterEach(async () => {
  vi.restoreAllMocks();
  await deleteDB(name, { blocked: () => undefined });
  await deleteDB(`${name} there`, { blocked: () => undefined });
});

/** Longer than what is packed and unpacked at once. */
const sound = Float32Array.from({ length: 300_001 }, (_, index) => Math.sin(index * index));
const probed: SessionDocument = {
  ...sampleDocument('2.0'),
  id: 'probed',
  name: 'Attic',
  takes: [{ ...sampleTake('2.0'), captureId: 'sound' }],
};

/** A bench whose sessions lie in a database of this browser, with a session of its own. */
function benchOf(database: string, session: SessionDocument) {
  const store = openStore(database);
  return { store, ...makeBench({ store, newId: () => crypto.randomUUID() }, session) };
}

async function fileOfProbed(): Promise<File> {
  const { store, bench } = benchOf(name, probed);
  await store.save(probed);
  await store.saveCapture('sound', sound);
  const file = await bench.sessions.saveFile();
  if (!file) throw new Error('no file was made');
  return new File([file.blob], file.name);
}

describe('a session file in the browser', () => {
  it('goes from one store into another, and is there for the next page', async () => {
    const file = await fileOfProbed();
    expect(file.name).toBe('Attic.leadline.zip');
    const mine = { ...sampleDocument('5.1'), id: 'mine', name: 'Mine' };
    const { store, bench } = benchOf(`${name} there`, mine);
    await store.save(mine);
    await bench.sessions.openFile(file);
    expect(bench.state.trouble).toBeNull();
    expect(bench.state.document).toEqual(probed);
    expect(bench.state.readings?.channels).toHaveLength(2);
    const next = openStore(`${name} there`);
    expect(await next.load()).toEqual(probed);
    expect(await next.loadCapture('sound')).toEqual(sound);
    expect(await next.read('mine')).toEqual(mine);
  });

  it('leaves nothing in the store when a recording in it is damaged', async () => {
    const bytes = new Uint8Array(await (await fileOfProbed()).arrayBuffer());
    bytes[1_000_000] = (bytes[1_000_000] ?? 0) ^ 1;
    const mine = { ...sampleDocument('5.1'), id: 'mine' };
    const { store, bench } = benchOf(`${name} there`, mine);
    await store.save(mine);
    await bench.sessions.openFile(new File([bytes], 'cut.zip'));
    expect(bench.state.trouble?.sentence).toContain('checksum');
    expect(bench.state.document.id).toBe('mine');
    expect(await store.read('probed')).toBeNull();
    expect(await store.loadCapture('sound')).toBeNull();
  });

  it('is opened and can be saved again when the disk is full', async () => {
    const file = await fileOfProbed();
    const { store, bench } = benchOf(`${name} there`, sampleDocument('5.1'));
    await store.load();
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('The quota has been exceeded.', 'QuotaExceededError');
    });
    await bench.sessions.openFile(file);
    expect(bench.state.trouble?.sentence).toContain('no room left');
    expect(bench.state.saved).toBe('failed');
    expect(bench.state.document).toEqual(probed);
    const again = await bench.sessions.saveFile();
    expect(again?.blob.size).toBeGreaterThan(4 * sound.length);
    vi.restoreAllMocks();
    bench.change('Rename session', (document) => ({ ...document, name: 'Loft' }));
    await expect.poll(() => bench.state.saved).toBe('saved');
    const stored = await openStore(`${name} there`).read('probed');
    if (stored === null || isTrouble(stored)) throw new Error('it was not saved');
    expect(stored.name).toBe('Loft');
    await expect.poll(() => openStore(`${name} there`).loadCapture('sound')).toEqual(sound);
  });
});
