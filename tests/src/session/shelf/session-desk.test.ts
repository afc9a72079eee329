import { describe, expect, it } from 'vitest';
import type { SessionDocument } from '../../../../src/session/document';
import { makeBench, settled, until } from '../make-bench';
import { fakeRig } from '../fake-rig';
import { toldReadings } from '../told-readings';

/** A bench whose takes need no time. */
function quickBench(document: Partial<SessionDocument> = {}) {
  const room = fakeRig();
  return makeBench(
    {
      makeRig: () => Promise.resolve(room.rig),
      read: (schedule) => Promise.resolve(toldReadings(schedule)),
    },
    { rig: 'live', ...document },
  );
}

type Made = ReturnType<typeof quickBench>;

function listed({ bench }: Made, deleted = false): string[] {
  const stored = bench.state.sessions.stored ?? [];
  return stored.filter((one) => one.deleted === deleted).map(({ name }) => name);
}

function idOf({ bench }: Made, name: string): string {
  const found = bench.state.sessions.stored?.find((one) => one.name === name);
  if (!found) throw new Error(`${name} is not in the list`);
  return found.id;
}

function rename({ bench }: Made, name: string): void {
  bench.change('Rename session', (document) => ({ ...document, name }));
}

/** Attic with a take, then Cellar on the bench. */
async function twoSessions(): Promise<Made> {
  const made = quickBench();
  rename(made, 'Attic');
  await made.bench.startTake();
  await made.bench.sessions.create();
  rename(made, 'Cellar');
  await made.bench.sessions.look();
  await settled();
  await made.bench.sessions.look();
  return made;
}

describe('sessions', () => {
  it('are listed with what they are, the one changed last first', async () => {
    const made = await twoSessions();
    expect(listed(made)).toEqual(['Cellar', 'Attic']);
    const attic = made.bench.state.sessions.stored?.[1]?.summary;
    expect(attic).toMatchObject({ layout: '2.0', progress: 'probed', takes: 1 });
    const [take] = made.held.sessions.get(idOf(made, 'Attic'))?.takes ?? [];
    expect(attic?.soundBytes).toBe(4 * (take?.schedule.lengthSamples ?? 0));
  });

  it('change places on the bench, takes and readings with them', async () => {
    const made = await twoSessions();
    const { bench } = made;
    expect(bench.state.readings).toBeNull();
    await bench.sessions.open(idOf(made, 'Attic'));
    expect(bench.state.document.name).toBe('Attic');
    expect(bench.state.readings?.channels.map(({ channel }) => channel)).toEqual(['FL', 'FR']);
    expect(made.held.last).toBe(bench.state.document.id);
    await bench.sessions.open(idOf(made, 'Cellar'));
    expect(bench.state.readings).toBeNull();
    expect(bench.state.layout.name).toBe(bench.state.document.layout);
  });

  it('are saved as they were left, also when the change came just before', async () => {
    const made = await twoSessions();
    rename(made, 'Cellar, later');
    await made.bench.sessions.open(idOf(made, 'Attic'));
    const names = [...made.held.sessions.values()].map(({ name }) => name).sort();
    expect(names).toEqual(['Attic', 'Cellar, later']);
  });

  it('keep their histories while the page lives', async () => {
    const made = await twoSessions();
    const { bench } = made;
    await bench.sessions.open(idOf(made, 'Attic'));
    expect(bench.state.history).toEqual({ undo: 'Take', redo: null });
    bench.undo();
    await bench.sessions.open(idOf(made, 'Cellar'));
    expect(bench.state.history.undo).toBe('Rename session');
    await bench.sessions.open(idOf(made, 'Attic'));
    bench.redo();
    expect(bench.state.document.takes).toHaveLength(1);
  });

  it('are copied with their recordings shared', async () => {
    const made = await twoSessions();
    const captures = made.held.captures.size;
    await made.bench.sessions.duplicate(idOf(made, 'Attic'));
    expect(listed(made)).toEqual(['Copy of Attic', 'Cellar', 'Attic']);
    expect(made.bench.state.document.name).toBe('Cellar');
    const copy = made.held.sessions.get(idOf(made, 'Copy of Attic'));
    const attic = made.held.sessions.get(idOf(made, 'Attic'));
    expect(copy?.takes).toEqual(attic?.takes);
    expect(copy?.id).not.toBe(attic?.id);
    expect(made.held.captures.size).toBe(captures);
  });

  it('are renamed on the bench and off it', async () => {
    const made = await twoSessions();
    await made.bench.sessions.rename(idOf(made, 'Attic'), 'Loft');
    await made.bench.sessions.rename(idOf(made, 'Cellar'), 'Vault');
    expect(listed(made).sort()).toEqual(['Loft', 'Vault']);
    expect(made.bench.state.document.name).toBe('Vault');
    expect(made.held.last).toBe(made.bench.state.document.id);
    made.bench.undo();
    expect(made.bench.state.document.name).not.toBe('Vault');
  });

  it('are refused while something runs', async () => {
    const made = quickBench({ layout: '7.1.4' });
    const { bench, held } = made;
    const run = bench.startTake();
    await until(bench, ({ activity }) => activity.kind === 'waiting');
    const { id } = bench.state.document;
    await bench.sessions.create();
    await bench.sessions.delete(id);
    expect(bench.state.document.id).toBe(id);
    expect(held.deleted.size).toBe(0);
    expect(bench.state.trouble?.sentence).toContain('Something is running');
    bench.stop();
    await run;
  });

  it('say when one is gone, and the one on the bench stays', async () => {
    const { bench } = quickBench();
    const { document } = bench.state;
    await bench.sessions.open('no such session');
    expect(bench.state.trouble?.sentence).toContain('no longer in this browser');
    expect(bench.state.document).toBe(document);
  });
});

describe('a deleted session', () => {
  it('stays whole in the store and comes back', async () => {
    const made = await twoSessions();
    const { bench, held } = made;
    const id = idOf(made, 'Attic');
    const before = held.sessions.get(id);
    const captures = new Map(held.captures);
    await bench.sessions.delete(id);
    expect(listed(made)).toEqual(['Cellar']);
    expect(listed(made, true)).toEqual(['Attic']);
    expect(held.sessions.get(id)).toBe(before);
    expect(held.captures).toEqual(captures);
    await bench.sessions.restore(id);
    expect(listed(made)).toEqual(['Cellar', 'Attic']);
    await bench.sessions.open(id);
    expect(bench.state.readings).not.toBeNull();
  });

  it('leaves the bench to the next one in the list', async () => {
    const made = await twoSessions();
    const cellar = idOf(made, 'Cellar');
    await made.bench.sessions.delete(cellar);
    expect(made.bench.state.document.name).toBe('Attic');
    expect(made.held.last).not.toBe(cellar);
    expect(listed(made, true)).toEqual(['Cellar']);
  });

  it('leaves the bench to a new one when it was the last', async () => {
    const made = quickBench();
    rename(made, 'Attic');
    await settled();
    const { id } = made.bench.state.document;
    await made.bench.sessions.delete(id);
    expect(made.bench.state.document.name).toBe('New room');
    expect(made.bench.state.document.id).not.toBe(id);
    expect(listed(made, true)).toEqual(['Attic']);
  });

  it('is removed for good with its recordings, but not with those a copy shares', async () => {
    const made = await twoSessions();
    const { bench, held } = made;
    const captures = held.captures.size;
    const attic = idOf(made, 'Attic');
    await bench.sessions.duplicate(attic);
    await bench.sessions.delete(attic);
    await bench.sessions.remove(attic);
    expect(held.sessions.has(attic)).toBe(false);
    expect(held.captures.size).toBe(captures);
    const copy = idOf(made, 'Copy of Attic');
    await bench.sessions.delete(copy);
    await bench.sessions.remove(copy);
    expect(listed(made)).toEqual(['Cellar']);
    expect(held.captures.size).toBe(0);
  });

  it('takes nothing with it that undo could bring back elsewhere', async () => {
    const made = await twoSessions();
    const { bench, held } = made;
    bench.setLayout('2.0');
    await bench.startTake();
    await settled();
    bench.undo();
    const captures = held.captures.size;
    const attic = idOf(made, 'Attic');
    await bench.sessions.delete(attic);
    await bench.sessions.remove(attic);
    expect(held.captures.size).toBe(captures - 1);
    bench.redo();
    const [take] = bench.state.document.takes;
    expect(held.captures.has(take?.captureId ?? '')).toBe(true);
  });

  it('is not removed before it is marked, nor while it is on the bench', async () => {
    const made = await twoSessions();
    await made.bench.sessions.remove(idOf(made, 'Attic'));
    await made.bench.sessions.remove(idOf(made, 'Cellar'));
    expect(listed(made)).toEqual(['Cellar', 'Attic']);
    expect(made.held.sessions.size).toBe(2);
  });
});

describe('an earlier session', () => {
  it('is held against the one on the bench, and both stay as they are', async () => {
    const made = await twoSessions();
    const { bench, held } = made;
    const attic = held.sessions.get(idOf(made, 'Attic'));
    const { document } = bench.state;
    await bench.sessions.compareWith(idOf(made, 'Attic'));
    expect(bench.state.sessions.earlier).toBe(attic);
    expect(bench.state.document).toBe(document);
    expect(bench.state.history.undo).toBe('Rename session');
    expect(held.last).toBe(document.id);
    await bench.sessions.compareWith(null);
    expect(bench.state.sessions.earlier).toBeNull();
  });

  it('comes from a file without being stored', async () => {
    const made = await twoSessions();
    const { bench, held } = made;
    await bench.sessions.open(idOf(made, 'Attic'));
    const saved = await bench.sessions.saveFile();
    if (!saved) throw new Error('the file was not made');
    await bench.sessions.open(idOf(made, 'Cellar'));
    const [sessions, captures] = [held.sessions.size, held.captures.size];
    await bench.sessions.compareWithFile(new File([saved.blob], saved.name));
    expect(bench.state.sessions.earlier?.name).toBe('Attic');
    expect(bench.state.document.name).toBe('Cellar');
    expect([held.sessions.size, held.captures.size]).toEqual([sessions, captures]);
  });

  it('is put away with the session it was held against', async () => {
    const made = await twoSessions();
    await made.bench.sessions.compareWith(idOf(made, 'Attic'));
    await made.bench.sessions.create();
    expect(made.bench.state.sessions.earlier).toBeNull();
  });

  it('is said when it cannot be read, and the one before stays', async () => {
    const made = await twoSessions();
    const { bench } = made;
    await bench.sessions.compareWith(idOf(made, 'Attic'));
    await bench.sessions.compareWithFile(new File(['no zip'], 'theirs.zip'));
    expect(bench.state.trouble?.trouble).toBe('bad-file');
    expect(bench.state.sessions.earlier?.name).toBe('Attic');
  });
});
