import { describe, expect, it } from 'vitest';
import { fakeRig } from './fake-rig';
import { makeBench } from './make-bench';
import { toldReadings } from './told-readings';

function benchOf() {
  const room = fakeRig();
  return makeBench(
    {
      makeRig: () => Promise.resolve(room.rig),
      read: (schedule) => Promise.resolve(toldReadings(schedule)),
    },
    { rig: 'live' },
  ).bench;
}

describe('positions', () => {
  it('hold their own takes: another seat starts empty, and the first comes back by its id', async () => {
    const bench = benchOf();
    await bench.startTake();
    const { readings } = bench.state;
    const first = bench.state.document.position.id;
    bench.setPosition({ name: 'Seat 2', kind: 'seat' });
    expect(bench.state.readings).toBeNull();
    expect(bench.state.document.position).toMatchObject({ name: 'Seat 2', kind: 'seat' });
    await bench.startTake();
    const [one, two] = bench.state.document.takes;
    expect(one?.position.id).toBe(first);
    expect(two?.position).toEqual(bench.state.document.position);
    bench.setPosition(first);
    expect(bench.state.readings).toEqual(readings);
    expect(bench.state.document.position.id).toBe(first);
  });

  it('do not change under a running take', async () => {
    const bench = benchOf();
    const run = bench.startTake();
    bench.setPosition({ name: 'Seat 2', kind: 'seat' });
    expect(bench.state.trouble?.sentence).toMatch(/running/);
    expect(bench.state.document.position.name).toBe('Seat 1');
    await run;
  });

  it('throw for an id that no position has', () => {
    expect(() => benchOf().setPosition('nowhere')).toThrow(RangeError);
  });

  it('do not mix a simulated room with a real one', async () => {
    const bench = benchOf();
    await bench.startTake();
    bench.change('Mark as simulated', (document) => ({
      ...document,
      takes: document.takes.map((take) => ({ ...take, rig: 'practice' as const })),
    }));
    await bench.startTake();
    expect(bench.state.document.takes.length).toBe(2);
    expect(bench.state.readings).toBe(bench.state.document.takes[1]?.readings);
  });
});
