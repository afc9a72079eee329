import { describe, expect, it } from 'vitest';
import type { BenchParts } from '../../../src/session/bench-parts';
import type { SessionDocument } from '../../../src/session/document';
import { newSession } from '../../../src/session/new-session';
import { trouble } from '../../../src/trouble';
import { fakeRig, type FakeRigOptions } from './fake-rig';
import { makeBench } from './make-bench';
import { toldReadings, type ToldFaults } from './told-readings';

/** A live bench whose takes read as told, one after another; then without faults. */
function benchOf(told: readonly ToldFaults[], repeats: number, options: FakeRigOptions = {}) {
  const room = fakeRig(options);
  let reads = 0;
  const parts: Partial<BenchParts> = {
    makeRig: () => Promise.resolve(room.rig),
    read: (schedule) => Promise.resolve(toldReadings(schedule, told[reads++])),
  };
  const document: Partial<SessionDocument> = {
    rig: 'live',
    layout: '3.0',
    take: { ...newSession('', '').take, repeats },
  };
  return { ...room, ...makeBench(parts, document) };
}

describe('a take', () => {
  it('is written for the rate the output runs at', async () => {
    const { bench, played } = benchOf([], 0, { sampleRate: 44100 });
    await bench.startTake();
    expect(bench.state.trouble).toBeNull();
    expect(played[0]?.schedule.sampleRate).toBe(44100);
    expect(bench.state.abilities?.sampleRate).toBe(44100);
  });
});

describe('a speaker whose segment came out damaged', () => {
  it('is repeated alone, with the reference speaker, and joined into the position', async () => {
    const { bench, played } = benchOf([{ FC: 'bang' }], 1);
    const places: string[] = [];
    bench.subscribe(() => {
      const { activity } = bench.state;
      if (activity.kind !== 'playing') return;
      const { part, repeating = [] } = activity;
      places.push(`${part.number} of ${part.of}, repeating ${repeating.join(' ')}`);
    });
    await bench.startTake();
    expect(bench.state.trouble).toBeNull();
    expect(played.map(({ swept }) => [...swept].sort())).toEqual([
      ['FC', 'FL', 'FR'],
      ['FC', 'FL'],
    ]);
    expect([...new Set(places)]).toEqual(['1 of 1, repeating ', '2 of 2, repeating FC']);
    expect(bench.state.toRepeat).toEqual([]);
    const centre = bench.state.readings?.channels.find(({ channel }) => channel === 'FC');
    expect(centre?.faults).toEqual([]);
    expect(centre?.levelDb).not.toBeNull();
    expect(bench.state.readings?.channels.length).toBe(3);
  });

  it('is told from the first take by its marks', async () => {
    const { bench, played } = benchOf([{ FC: 'bang' }, { FC: 'bang' }], 2);
    await bench.startTake();
    const ids = played.map(({ schedule }) => schedule.id);
    expect(ids.length).toBe(3);
    expect(new Set(ids).size).toBe(3);
  });

  it('is repeated no more often than the session says, and stays named', async () => {
    const bad: ToldFaults = { FC: 'noisy' };
    const { bench, played } = benchOf([bad, bad, bad, bad], 2);
    await bench.startTake();
    expect(played.length).toBe(3);
    expect(bench.state.toRepeat).toEqual(['FC']);
    expect(bench.state.activity.kind).toBe('idle');
  });

  it('is not repeated when the session says never, and can be by hand', async () => {
    const { bench, played } = benchOf([{ FR: 'hum' }], 0);
    await bench.startTake();
    expect(played.length).toBe(1);
    expect(bench.state.toRepeat).toEqual(['FR']);
    await bench.repeatSegments(['FR']);
    expect([...(played[1]?.swept ?? [])].sort()).toEqual(['FL', 'FR']);
    expect(bench.state.toRepeat).toEqual([]);
    expect(bench.state.document.takes.length).toBe(2);
  });

  it('is not repeated by itself when it was silent', async () => {
    const { bench, played } = benchOf([{ FR: 'silent' }], 3);
    await bench.startTake();
    expect(played.length).toBe(1);
  });

  it('keeps the readings of the first take when its repeat breaks off', async () => {
    const gone = trouble('device-gone', 'The microphone is gone.');
    const { bench } = benchOf([{ FC: 'bang' }], 1, { end: (take) => (take === 1 ? gone : null) });
    await bench.startTake();
    expect(bench.state.trouble).toBe(gone);
    expect(bench.state.document.takes.length).toBe(1);
    expect(bench.state.readings?.channels.length).toBe(3);
    expect(bench.state.toRepeat).toEqual(['FC']);
  });

  it('asks for nothing when there is nothing to repeat', async () => {
    const { bench, played } = benchOf([], 1);
    await bench.repeatSegments([]);
    expect(played.length).toBe(0);
    expect(bench.state.trouble).toBeNull();
  });
});
