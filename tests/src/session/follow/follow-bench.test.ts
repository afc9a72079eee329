import { describe, expect, it } from 'vitest';
import { tellSaves } from '../../../../src/session/follow/tell-saves';
import { trouble } from '../../../../src/trouble';
import { sampleDocument, sampleTake } from '../../../components/sample-session';
import { makeBench, settled } from '../make-bench';
import { memoryStore } from '../memory-store';

/** Two benches on one store: one writes, and the other shows what was saved. */
function twoBenches() {
  const { held, store } = memoryStore();
  const copies = { ...store, load: async () => structuredClone(await store.load()) };
  const said = { saves: 0 };
  const writer = makeBench({ store: tellSaves(store, () => said.saves++) }).bench;
  const follower = makeBench({ store: copies }, { id: 'of its own' }).bench;
  follower.follow();
  return { held, writer, follower, said };
}

describe('a bench that follows', () => {
  it('shows what the other saved, and changes nothing itself', async () => {
    const { held, writer, follower, said } = twoBenches();
    writer.change('Rename session', (document) => ({ ...document, name: 'Attic' }));
    writer.setLayout('5.1');
    await settled();
    expect(said.saves).toBeGreaterThan(0);
    await follower.showStored();
    expect(follower.state.document).toEqual(writer.state.document);
    expect(follower.state.layout.name).toBe('5.1');
    expect(follower.state.saved).toBe('elsewhere');
    follower.change('Rename session', (document) => ({ ...document, name: 'Mine' }));
    await settled();
    expect(follower.state.document.name).toBe('Attic');
    expect(held.sessions.size).toBe(1);
  });

  it('makes a new trouble of each refusal, so that each can be seen', () => {
    const { follower } = twoBenches();
    follower.change('Rename session', (document) => ({ ...document, name: 'Mine' }));
    const first = follower.state.trouble;
    follower.change('Rename session', (document) => ({ ...document, name: 'Mine' }));
    expect(first?.sentence).toContain('another tab');
    expect(follower.state.trouble).toEqual(first);
    expect(follower.state.trouble).not.toBe(first);
  });

  it('works nothing out again that is as it was', async () => {
    const { writer, follower } = twoBenches();
    writer.change('Bring a take', (document) => ({
      ...document,
      takes: [{ ...sampleTake('2.0'), captureId: 'sound' }],
    }));
    await settled();
    await follower.showStored();
    const { readings, proposal } = follower.state;
    expect(readings).not.toBeNull();
    writer.change('Tick', (document) => ({ ...document, typed: { 'level FL': '0 dB' } }));
    await settled();
    await follower.showStored();
    expect(follower.state.document.typed).toEqual({ 'level FL': '0 dB' });
    expect(follower.state.readings).toBe(readings);
    expect(follower.state.proposal).toBe(proposal);
  });

  it('goes along when another session is opened there', async () => {
    const { writer, follower } = twoBenches();
    await writer.sessions.create();
    await settled();
    await follower.showStored();
    expect(follower.state.document).toEqual(writer.state.document);
    expect(follower.state.history).toEqual({ undo: null, redo: null });
  });

  it('goes on from what was saved last once it takes over, and saves', async () => {
    const { held, writer, follower } = twoBenches();
    writer.change('Rename session', (document) => ({ ...document, name: 'Attic' }));
    await settled();
    follower.change('Refused', (document) => ({ ...document, name: 'Mine' }));
    await follower.takeOver();
    expect(follower.state.document.name).toBe('Attic');
    expect(follower.state.saved).toBe('saved');
    expect(follower.state.trouble).toBeNull();
    follower.change('Rename session', (document) => ({ ...document, name: 'Loft' }));
    await settled();
    expect([...held.sessions.values()].map(({ name }) => name)).toEqual(['Loft']);
    // A note that comes late changes nothing any more.
    await follower.showStored();
    expect(follower.state.document.name).toBe('Loft');
  });
});

describe('a store that tells', () => {
  it('says so after what it took, and only then', async () => {
    const { held, store } = memoryStore();
    let said = 0;
    const telling = tellSaves(store, () => said++);
    const document = sampleDocument('2.0');
    await telling.save(document);
    await telling.makeLast(document.id);
    await telling.markDeleted(document.id, true);
    await telling.remove(null, new Set());
    expect(said).toBe(4);
    await telling.list();
    await telling.load();
    held.full = trouble('storage', 'The disk is full.');
    await telling.save(document);
    expect(said).toBe(4);
  });
});
