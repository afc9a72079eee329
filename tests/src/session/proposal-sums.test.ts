import { describe, expect, it } from 'vitest';
import type { BenchParts } from '../../../src/session/bench-parts';
import { proposeSettings } from '../../../src/proposal/propose-settings';
import type { ProposalTerms } from '../../../src/session/proposal-terms';
import { isTrouble } from '../../../src/trouble';
import { roomyBass } from '../proposal/sample-bass';
import { fakeRig } from './fake-rig';
import { makeBench, until } from './make-bench';
import { toldReadings } from './told-readings';

/** A bench whose takes hold bass; what it proposes waits for `release`. */
function benchOf(propose?: BenchParts['propose']) {
  const orders: {
    terms: ProposalTerms;
    signal: AbortSignal;
    release: () => void;
    fail: () => void;
  }[] = [];
  const waiting: BenchParts['propose'] = (terms, signal) =>
    new Promise((resolve) => {
      const { readings, layout, processor, options } = terms;
      const release = (): void => {
        const proposal = proposeSettings(readings, layout, processor, options);
        resolve(isTrouble(proposal) ? null : proposal);
      };
      orders.push({ terms, signal, release, fail: () => resolve(null) });
    });
  const { bench } = makeBench(
    {
      makeRig: () => Promise.resolve(fakeRig().rig),
      read: (schedule) => {
        const told = toldReadings(schedule);
        const channels = told.channels.map((one, index) => ({
          ...one,
          bass: roomyBass(0.001 * index, index + 1),
        }));
        return Promise.resolve({ ...told, channels });
      },
      propose: propose ?? waiting,
    },
    { rig: 'live', layout: '2.1' },
  );
  return { bench, orders };
}

/** A bench with a take and its whole proposal. */
async function proposedBench() {
  const { bench, orders } = benchOf();
  await bench.startTake();
  orders.at(-1)?.release();
  const { proposal } = await until(bench, (state) => state.proposal?.sums === 'there');
  return { bench, orders, whole: proposal };
}

describe('the proposal of a session', () => {
  it('follows a take whole, from a worker', async () => {
    const { bench, orders } = benchOf();
    await bench.startTake();
    expect(bench.state.readings).not.toBeNull();
    expect(bench.state.proposal).toBeNull();
    expect(orders).toHaveLength(1);
    orders.at(-1)?.release();
    const { proposal } = await until(bench, (state) => state.proposal !== null);
    expect(proposal?.sums).toBe('there');
    expect(proposal?.subs?.alignment).not.toBeNull();
  });

  it('is there at once for another processor, and its sums follow', async () => {
    const { bench, orders } = await proposedBench();
    bench.change('Choose steps', (document) => ({
      ...document,
      processor: { ...document.processor },
    }));
    expect(bench.state.proposal?.sums).toBe('coming');
    expect(bench.state.proposal?.groups[0]?.crossoverHz).toBeTypeOf('number');
    orders.at(-1)?.release();
    const { proposal } = await until(bench, (state) => state.proposal?.sums === 'there');
    expect(proposal?.subs?.alignment).not.toBeNull();
  });

  it('breaks sums off that a change has overtaken', async () => {
    const { bench, orders } = benchOf();
    await bench.startTake();
    const stale = orders.at(-1);
    bench.change('Choose crossover', (document) => ({
      ...document,
      chosenCrossoverHz: { fronts: 120 },
    }));
    expect(stale?.signal.aborted).toBe(true);
    stale?.release();
    orders.at(-1)?.release();
    const { proposal } = await until(bench, (state) => state.proposal?.sums === 'there');
    expect(proposal?.settings.crossoverHz.fronts).toBe(120);
    expect(proposal?.groups[0]?.own?.crossoverHz).toBe(120);
  });

  it('keeps the whole one, marked as outdated, until the one with newer choices is there', async () => {
    const { bench, orders, whole } = await proposedBench();
    for (const fronts of [120, 150]) {
      bench.change('Choose crossover', (document) => ({
        ...document,
        chosenCrossoverHz: { fronts },
      }));
      expect(bench.state.proposal).toEqual({ ...whole, sums: 'outdated' });
    }
    orders.at(-1)?.release();
    const { proposal } = await until(bench, (state) => state.proposal?.sums === 'there');
    expect(proposal?.settings.crossoverHz.fronts).toBe(150);
  });

  it('proposes with the newest choices even when their sums cannot be worked out', async () => {
    const { bench, orders } = await proposedBench();
    bench.change('Choose crossover', (document) => ({
      ...document,
      chosenCrossoverHz: { fronts: 120 },
    }));
    orders.at(-1)?.fail();
    const { proposal } = await until(bench, (state) => state.proposal?.sums === 'there');
    expect(proposal?.settings.crossoverHz.fronts).toBe(120);
    expect(proposal?.missing.at(-1)?.sentence).toContain('could not be worked out');
  });

  it('says so when the sums could not be worked out', async () => {
    const { bench } = benchOf(() => Promise.resolve(null));
    await bench.startTake();
    const { proposal } = await until(bench, (state) => state.proposal?.sums === 'there');
    expect(proposal?.missing.at(-1)?.sentence).toContain('could not be worked out');
  });

  it('rests on the takes of the other seats', async () => {
    const { bench, orders } = benchOf();
    await bench.startTake();
    bench.setPosition({ name: 'Sofa', kind: 'seat' });
    await bench.startTake();
    const { options } = orders.at(-1)?.terms ?? expect.fail('nothing was proposed');
    expect(options.seat).toBe('Sofa');
    expect(options.otherSeats?.map(({ name }) => name)).toEqual(['Seat 1']);
    bench.setPosition({ name: 'At the sub', kind: 'close' });
    await bench.startTake();
    expect(orders.at(-1)?.terms.options.otherSeats).toEqual([]);
  });

  it('does not change for what it does not rest on', async () => {
    const { bench, whole } = await proposedBench();
    bench.change('Tick a line', (document) => ({ ...document, typed: { 'level FL': '0.0 dB' } }));
    expect(bench.state.proposal).toBe(whole);
  });
});
