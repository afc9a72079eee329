import { describe, expect, it } from 'vitest';
import type { SessionDocument } from '../../../src/session/document';
import { fakeRig } from './fake-rig';
import { makeBench, settled, until } from './make-bench';
import { toldReadings } from './told-readings';

function quickBench(document: Partial<SessionDocument> = {}) {
  const room = fakeRig();
  let reads = 0;
  const made = makeBench(
    {
      makeRig: () => Promise.resolve(room.rig),
      read: (schedule) => {
        reads++;
        return Promise.resolve(toldReadings(schedule));
      },
    },
    { rig: 'live', ...document },
  );
  return { ...room, ...made, reads: () => reads };
}

describe('undo and redo', () => {
  it('name what they would do', () => {
    const { bench } = makeBench();
    expect(bench.state.history).toEqual({ undo: null, redo: null });
    bench.change('Choose practice room', (document) => ({
      ...document,
      practice: { ...document.practice, seed: 9 },
    }));
    expect(bench.state.history).toEqual({ undo: 'Choose practice room', redo: null });
    bench.undo();
    expect(bench.state.document.practice.seed).toBe(3);
    expect(bench.state.history).toEqual({ undo: null, redo: 'Choose practice room' });
    bench.redo();
    expect(bench.state.document.practice.seed).toBe(9);
    expect(bench.state.history).toEqual({ undo: 'Choose practice room', redo: null });
  });

  it('do nothing when there is nothing to do', () => {
    const { bench } = makeBench();
    const { document } = bench.state;
    bench.undo();
    bench.redo();
    expect(bench.state.document).toBe(document);
    expect(bench.state.trouble).toBeNull();
  });

  it('are saved like any change', async () => {
    const { bench, held } = makeBench();
    bench.change('Rename session', (document) => ({ ...document, name: 'Attic' }));
    bench.undo();
    await settled();
    expect(held.documents.at(-1)?.name).toBe('New room');
    expect(bench.state.saved).toBe('saved');
  });

  it('take the layout along, and what was heard of the wiring of before', () => {
    const { bench } = makeBench({}, { earAnswers: { FL: { kind: 'here' } } });
    bench.setRig('live');
    expect(bench.state.document.earAnswers).toEqual({});
    bench.setLayout('5.1');
    bench.undo();
    expect(bench.state.layout.name).toBe('2.0');
    expect(bench.state.layout.channels).toHaveLength(2);
    bench.undo();
    expect(bench.state.document.rig).toBe('practice');
    expect(bench.state.document.earAnswers).toEqual({ FL: { kind: 'here' } });
    bench.redo();
    bench.redo();
    expect(bench.state.layout.name).toBe('5.1');
    expect(bench.state.document.rig).toBe('live');
  });

  it('hide a take and show it again, its recording untouched and nothing read anew', async () => {
    const { bench, held, reads } = quickBench();
    await bench.startTake();
    const { document, readings } = bench.state;
    expect(readings).not.toBeNull();
    const { captures } = held;
    const stored = new Map(captures);
    const before = reads();
    expect(bench.state.history.undo).toBe('Take');
    bench.undo();
    expect(bench.state.document.takes).toEqual([]);
    expect(bench.state.readings).toBeNull();
    expect(bench.state.proposal).toBeNull();
    expect(captures).toEqual(stored);
    bench.redo();
    expect(bench.state.document.takes).toEqual(document.takes);
    expect(bench.state.readings).toBe(readings);
    await settled();
    expect(reads()).toBe(before);
  });

  it('bring back discarded takes', async () => {
    const { bench } = quickBench();
    await bench.startTake();
    const { takes } = bench.state.document;
    bench.change('Discard takes', (document) => ({ ...document, takes: [] }));
    bench.undo();
    expect(bench.state.document.takes).toEqual(takes);
  });

  it('bring back distances with the temperature they were derived at', async () => {
    const { bench } = quickBench();
    await bench.startTake();
    const distances = () => bench.state.readings?.channels.map((one) => one.distanceMetres);
    const before = distances();
    bench.change('Set temperature', (document) => ({
      ...document,
      conditions: { ...document.conditions, temperatureCelsius: 35 },
    }));
    bench.undo();
    expect(bench.state.document.conditions.temperatureCelsius).toBe(20);
    expect(distances()).toEqual(before);
  });

  it('are refused while something runs, with a sentence', async () => {
    const { bench } = quickBench({ layout: '7.1.4' });
    bench.change('Rename session', (document) => ({ ...document, name: 'Attic' }));
    const run = bench.startTake();
    await until(bench, ({ activity }) => activity.kind === 'waiting');
    bench.undo();
    expect(bench.state.document.name).toBe('Attic');
    expect(bench.state.trouble?.sentence).toContain('Something is running');
    bench.stop();
    await run;
  });

  it('are refused in a tab that only follows', () => {
    const { bench } = makeBench();
    bench.change('Rename session', (document) => ({ ...document, name: 'Attic' }));
    bench.follow();
    bench.undo();
    expect(bench.state.document.name).toBe('Attic');
    expect(bench.state.trouble?.sentence).toContain('another tab');
  });

  it('read a take that was renamed over before it was read', async () => {
    const { bench } = quickBench();
    const run = bench.startTake();
    await until(bench, ({ document }) => document.takes.length === 1);
    bench.change('Rename session', (document) => ({ ...document, name: 'Attic' }));
    await run;
    bench.undo();
    expect(bench.state.document.name).toBe('New room');
    expect(bench.state.readings).not.toBeNull();
    bench.undo();
    expect(bench.state.document.takes).toEqual([]);
  });
});
