import { describe, expect, it } from 'vitest';
import { isTrouble, trouble } from '../../../../src/trouble';
import { holdInHand } from '../../../../src/session/shelf/hold-in-hand';
import { sampleDocument } from '../../../components/sample-session';
import { fakeRig } from '../fake-rig';
import { makeBench, settled } from '../make-bench';
import { memoryStore } from '../memory-store';
import { toldReadings } from '../told-readings';

const full = trouble('storage', 'The disk is full.');
const attic = { ...sampleDocument('2.0'), id: 'attic', name: 'Attic' };
const cellar = { ...sampleDocument('2.0'), id: 'cellar', name: 'Cellar' };

describe('what a full disk would not take', () => {
  it('stays in hand: it is listed, opened and read, and its trouble is said', async () => {
    const { held, store } = memoryStore();
    const hand = holdInHand(store);
    await hand.save(cellar);
    held.full = full;
    expect(await hand.save(attic)).toBe(full);
    expect(await hand.saveCapture('sound', new Float32Array([0.5]))).toBe(full);
    expect(held.sessions.has('attic')).toBe(false);
    const list = await hand.list();
    if (isTrouble(list)) throw new Error(list.sentence);
    expect(list.map(({ name }) => name)).toEqual(['Attic', 'Cellar']);
    expect(await hand.read('attic')).toBe(attic);
    expect(await hand.loadCapture('sound')).toEqual(new Float32Array([0.5]));
  });

  it('is handed over as soon as there is room', async () => {
    const { held, store } = memoryStore();
    const hand = holdInHand(store);
    held.full = full;
    await hand.save(attic);
    await hand.saveCapture('sound', new Float32Array([0.5]));
    held.full = null;
    expect(await hand.save(cellar)).toBeNull();
    expect(held.sessions.get('attic')).toBe(attic);
    expect(held.captures.get('sound')).toEqual(new Float32Array([0.5]));
    expect(held.last).toBe('cellar');
  });

  it('can be deleted and removed while it is in hand', async () => {
    const { held, store } = memoryStore();
    const hand = holdInHand(store);
    held.full = full;
    await hand.save(attic);
    await hand.markDeleted('attic', true);
    expect(await hand.list()).toMatchObject([{ name: 'Attic', deleted: true }]);
    await hand.remove('attic', new Set());
    expect(await hand.list()).toEqual([]);
  });

  it('is not called saved while a recording of it is still in hand', async () => {
    const { held, store } = memoryStore();
    let room = 0;
    const hand = holdInHand({
      ...store,
      saveCapture: (id, samples) =>
        samples.length > room ? Promise.resolve(full) : store.saveCapture(id, samples),
    });
    await hand.saveCapture('sound', new Float32Array(1000));
    expect(await hand.save(attic)).toBe(full);
    expect(held.sessions.get('attic')).toBe(attic);
    room = 1000;
    expect(await hand.save(attic)).toBeNull();
    expect(held.captures.get('sound')).toHaveLength(1000);
  });

  it('hands over recordings before the session that names them', async () => {
    const { held, store } = memoryStore();
    const order: string[] = [];
    const hand = holdInHand({
      ...store,
      save: (document) => (order.push('session'), store.save(document)),
      saveCapture: (id, samples) => (order.push('sound'), store.saveCapture(id, samples)),
    });
    held.full = full;
    await hand.saveCapture('sound', new Float32Array(4));
    held.full = null;
    order.length = 0;
    await hand.save(attic);
    expect(order).toEqual(['sound', 'session']);
  });

  it('hands over what was deleted meanwhile', async () => {
    const { held, store } = memoryStore();
    const hand = holdInHand(store);
    await hand.save(attic);
    await hand.save(cellar);
    held.full = full;
    expect(await hand.markDeleted('attic', true)).toBe(full);
    held.full = null;
    await hand.save(cellar);
    expect([...held.deleted]).toEqual(['attic']);
  });

  it('can be removed to make room, though its mark could not be stored', async () => {
    const { held, store } = memoryStore();
    const hand = holdInHand(store);
    await hand.save(attic);
    await hand.save(cellar);
    held.full = full;
    await hand.markDeleted('attic', true);
    expect(await hand.remove('attic', new Set())).toBeNull();
    expect([...held.sessions.keys()]).toEqual(['cellar']);
    held.full = null;
    await hand.save(cellar);
    expect(held.deleted.size).toBe(0);
  });

  it('lies there as it was before, not half changed', async () => {
    const { held, store } = memoryStore();
    const hand = holdInHand(store);
    await hand.save(attic);
    held.full = full;
    await hand.save({ ...attic, name: 'Loft' });
    expect(held.sessions.get('attic')).toBe(attic);
    expect(await hand.list()).toMatchObject([{ name: 'Loft' }]);
  });
});

describe('a bench on a full disk', () => {
  it('keeps a take that could not be stored, for its file and for reading it again', async () => {
    const room = fakeRig();
    const { bench, held } = makeBench(
      {
        makeRig: () => Promise.resolve(room.rig),
        read: (schedule) => Promise.resolve(toldReadings(schedule)),
      },
      { rig: 'live' },
    );
    held.full = full;
    await bench.startTake();
    await settled();
    expect(bench.state.saved).toBe('failed');
    expect(bench.state.readings).not.toBeNull();
    expect(held.captures.size).toBe(0);
    const file = await bench.sessions.saveFile();
    expect(file?.blob.size).toBeGreaterThan(1000);
    const other = makeBench();
    await other.bench.sessions.openFile(new File([file?.blob ?? ''], 'session.zip'));
    expect(other.bench.state.trouble).toBeNull();
    expect(other.bench.state.document).toEqual(bench.state.document);
    expect(other.held.captures.size).toBe(1);
  });

  it('saves by itself once there is room, and takes back what it said', async () => {
    const { bench, held } = makeBench();
    held.full = full;
    bench.change('Rename session', (document) => ({ ...document, name: 'Attic' }));
    await settled();
    bench.dismissTrouble();
    bench.saveAgain();
    await settled();
    expect(bench.state.saved).toBe('failed');
    expect(bench.state.trouble).toBeNull();
    bench.change('Rename session', (document) => ({ ...document, name: 'Loft' }));
    await settled();
    expect(bench.state.trouble).toBe(full);
    held.full = null;
    bench.saveAgain();
    await settled();
    expect(bench.state.saved).toBe('saved');
    expect(bench.state.trouble).toBeNull();
    expect(held.sessions.get(bench.state.document.id)?.name).toBe('Loft');
  });

  it('leaves alone what is wrong besides', async () => {
    const { bench, held } = makeBench();
    held.full = full;
    bench.change('Rename session', (document) => ({ ...document, name: 'Attic' }));
    await settled();
    bench.setLayout('eleven');
    held.full = null;
    bench.saveAgain();
    await settled();
    expect(bench.state.saved).toBe('saved');
    expect(bench.state.trouble?.trouble).toBe('bad-layout');
  });

  it('goes to another session and back without losing what was not saved', async () => {
    const { bench, held } = makeBench();
    await settled();
    held.full = full;
    bench.change('Rename session', (document) => ({ ...document, name: 'Attic' }));
    await settled();
    const { id } = bench.state.document;
    await bench.sessions.create();
    expect(bench.state.saved).toBe('failed');
    expect(bench.state.document.id).not.toBe(id);
    await bench.sessions.open(id);
    expect(bench.state.document.name).toBe('Attic');
    expect(bench.state.saved).toBe('failed');
    held.full = null;
    bench.change('Rename session', (document) => ({ ...document, name: 'Loft' }));
    await settled();
    expect(held.sessions.get(id)?.name).toBe('Loft');
    expect(held.sessions.size).toBe(2);
  });
});
