import { describe, expect, it } from 'vitest';
import { readTake } from '../../../src/reading/read-take';
import { practiceRig } from '../../../src/rig/practice';
import type { Rig } from '../../../src/rig/port';
import { trouble } from '../../../src/trouble';
import { makeBench, settled, until } from './make-bench';

describe('the bench', () => {
  it('runs a take in the practice room: captured, read, proposed, saved', async () => {
    const { bench, held } = makeBench();
    const kinds = new Set<string>();
    const arrived: number[] = [];
    bench.subscribe(() => {
      const { activity } = bench.state;
      kinds.add(activity.kind);
      if (activity.kind === 'reading') arrived.push(activity.channels.length);
    });
    await bench.startTake();
    await settled();
    expect([...kinds]).toEqual(['idle', 'playing', 'reading']);
    expect(bench.state.activity.kind).toBe('idle');
    expect(arrived).toEqual([...arrived].sort((a, b) => a - b));
    expect(bench.state.trouble).toBeNull();
    expect(bench.state.readings?.channels.map(({ channel }) => channel)).toEqual(['FL', 'FR']);
    expect(bench.state.proposal?.channels.map(({ channel }) => channel)).toEqual(['FL', 'FR']);
    expect(bench.state.readings?.simulated).toBe(true);
    expect(held.documents.at(-1)).toEqual(bench.state.document);
    const [take] = bench.state.document.takes;
    expect(held.captures.get(take?.captureId ?? '')?.length).toBeGreaterThan(0);
  });

  it('plays nothing while another tab writes the session', async () => {
    let rigs = 0;
    const { bench } = makeBench({
      makeRig: (session, layout) => {
        rigs++;
        return Promise.resolve(practiceRig({ layout, seed: session.practice.seed }));
      },
    });
    bench.follow();
    await bench.startTake();
    expect(rigs).toBe(0);
    expect(bench.state.trouble?.sentence).toMatch(/open in another tab/);
    expect(bench.state.activity.kind).toBe('idle');
  });

  it('stops at once and keeps what was there', async () => {
    const { bench } = makeBench();
    const before = bench.state.document;
    const run = bench.startTake();
    bench.stop();
    await run;
    expect(bench.state.trouble?.trouble).toBe('stopped');
    expect(bench.state.activity.kind).toBe('idle');
    expect(bench.state.document).toBe(before);
  });

  it('keeps a finished capture when its reading is stopped, and reads it later', async () => {
    const { bench, held } = makeBench({
      read: (schedule, capture, options) => {
        bench.stop();
        return readTake(schedule, capture, options);
      },
    });
    await bench.startTake();
    await settled();
    expect(bench.state.trouble?.trouble).toBe('stopped');
    expect(bench.state.document.takes.map(({ readings }) => readings)).toEqual([null]);
    const stored = held.documents.at(-1);
    if (!stored) throw new Error('nothing was saved');
    const samples = held.captures.get(stored.takes[0]?.captureId ?? '');
    const again = makeBench({}, stored);
    again.held.captures.set(stored.takes[0]?.captureId ?? '', samples ?? new Float32Array(0));
    await again.bench.resume();
    expect(again.bench.state.readings?.channels.length).toBe(2);
  });

  it('says what a rig could not do, changes nothing, and can run again', async () => {
    let broken = true;
    const gone = trouble('device-gone', 'The microphone is gone.');
    const { bench } = makeBench({
      makeRig: (session, layout) => {
        const rig: Rig = practiceRig({ layout, seed: session.practice.seed });
        return Promise.resolve(broken ? { ...rig, play: () => Promise.resolve(gone) } : rig);
      },
    });
    const before = bench.state.document;
    await bench.startTake();
    expect(bench.state.trouble).toBe(gone);
    expect(bench.state.document).toBe(before);
    broken = false;
    await bench.startTake();
    expect(bench.state.readings).not.toBeNull();
    expect(bench.state.trouble).toBeNull();
  });

  it('turns what throws into a sentence', async () => {
    const { bench } = makeBench({ makeRig: () => Promise.reject(new Error('a cable burnt')) });
    await bench.startTake();
    expect(bench.state.trouble?.sentence).toContain('a cable burnt');
    expect(bench.state.activity.kind).toBe('idle');
  });

  it('refuses a layout that means nothing and keeps the one in hand', () => {
    const { bench } = makeBench();
    bench.setLayout('5.1.3');
    expect(bench.state.trouble?.trouble).toBe('bad-layout');
    expect(bench.state.document.layout).toBe('2.0');
    bench.setLayout('5.1');
    expect(bench.state.trouble).toBeNull();
    expect(bench.state.layout.channels.length).toBe(6);
  });

  it('lets no layout change, and no second take, into a running one', async () => {
    const { bench } = makeBench();
    const run = bench.startTake();
    bench.setLayout('5.1');
    expect(bench.state.layout.name).toBe('2.0');
    await bench.startTake();
    expect(bench.state.trouble?.sentence).toContain('running');
    bench.stop();
    await run;
    expect(bench.state.document.takes).toEqual([]);
  });

  it('shows the readings of a layout only while that layout is declared', async () => {
    const { bench } = makeBench();
    await bench.startTake();
    const { readings } = bench.state;
    bench.setLayout('3.1');
    expect(bench.state.readings).toBeNull();
    expect(bench.state.proposal).toBeNull();
    bench.setLayout('2.0');
    expect(bench.state.readings).toBe(readings);
    const { proposal } = await until(bench, (state) => state.proposal !== null);
    expect(proposal?.layout).toBe('2.0');
  });

  it('says when the disk is full and goes on', async () => {
    const { bench, held } = makeBench();
    held.full = trouble('storage', 'The disk is full.');
    bench.change('Rename', (document) => ({ ...document, name: 'Attic' }));
    await settled();
    expect(bench.state.saved).toBe('failed');
    expect(bench.state.trouble).toBe(held.full);
    expect(bench.state.document.name).toBe('Attic');
    held.full = null;
    bench.change('Rename', (document) => ({ ...document, name: 'Cellar' }));
    await settled();
    expect(bench.state.saved).toBe('saved');
    expect(held.documents.at(-1)?.name).toBe('Cellar');
  });

  it('at no moment calls a change saved that is not stored', async () => {
    const { bench, held } = makeBench();
    const early: string[] = [];
    bench.subscribe(() => {
      const { saved, document } = bench.state;
      if (saved === 'saved' && held.documents.at(-1) !== document) early.push(document.name);
    });
    bench.change('Rename', (document) => ({ ...document, name: 'Attic' }));
    await settled();
    bench.undo();
    await settled();
    expect(bench.state.saved).toBe('saved');
    expect(held.documents).toHaveLength(2);
    expect(early).toEqual([]);
  });

  it('saves changes that come fast once, the newest', async () => {
    const { bench, held } = makeBench();
    for (const name of ['A', 'At', 'Att', 'Attic']) {
      bench.change('Rename', (document) => ({ ...document, name }));
    }
    await settled();
    expect(held.documents.map(({ name }) => name)).toEqual(['Attic']);
    expect(bench.state.saved).toBe('saved');
  });

  it('changes nothing in a tab that only follows', () => {
    const { bench, held } = makeBench();
    bench.follow();
    const before = bench.state.document;
    bench.change('Rename', (document) => ({ ...document, name: 'Attic' }));
    bench.setLayout('5.1');
    expect(bench.state.document).toBe(before);
    expect(bench.state.layout.name).toBe('2.0');
    expect(bench.state.trouble?.sentence).toContain('another tab');
    expect(held.documents).toEqual([]);
  });

  it('refuses a recording that is none, in a sentence', async () => {
    const { bench } = makeBench();
    await bench.importCapture(new File(['words'], 'capture.wav'));
    expect(bench.state.trouble).toMatchObject({ trouble: 'bad-wav' });
    expect(bench.state.document.takes).toEqual([]);
  });
});
