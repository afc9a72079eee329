import { deleteDB } from 'idb';
import { afterEach, expect, describe, it } from 'vitest';
import type { Bench, BenchState } from '../../src/session/bench';
import { createBench } from '../../src/session/create-bench';
import { openStore } from '../../src/session/store';
import { isTrouble } from '../../src/trouble';
import { sampleDocument } from '../components/sample-session';

const name = 'leadline-test-bench';

afterEach(() => deleteDB(name, { blocked: () => undefined }));

function until(bench: Bench, wanted: (state: BenchState) => boolean): Promise<BenchState> {
  return new Promise((resolve) => {
    const leave = bench.subscribe(look);
    look();
    function look(): void {
      if (!wanted(bench.state)) return;
      leave();
      resolve(bench.state);
    }
  });
}

describe('the bench of a page, with its workers and its store', () => {
  it('takes, listens to noise, and stores both as they are shown', async () => {
    const store = openStore(name);
    // What was deleted on the page before, and a recording that nothing names.
    await store.save({ ...sampleDocument('5.1'), id: 'deleted' });
    await store.markDeleted('deleted', true);
    await store.saveCapture('nobody’s', new Float32Array(4));
    await store.save({ ...sampleDocument('5.1'), id: 'mine' });
    const bench = await createBench(store);
    expect(bench.state.document.id).toBe('mine');
    await expect.poll(() => store.read('deleted')).toBeNull();
    await expect.poll(() => store.loadCapture('nobody’s')).toBeNull();
    bench.setLayout('2.0');
    bench.change('Shorten sweeps', (document) => ({
      ...document,
      take: { ...document.take, sweepSeconds: 0.5 },
    }));
    await bench.startTake();
    expect(bench.state.trouble).toBeNull();
    expect(bench.state.readings?.channels.length).toBe(2);

    const run = bench.startNoise({
      kind: 'noise',
      channel: 'FR',
      lowHz: 500,
      highHz: 2000,
      gainDb: -20,
      bandsPerOctave: 3,
      averagingSeconds: 3,
    });
    await until(
      bench,
      ({ activity }) => activity.kind === 'noise' && activity.noise.reading !== null,
    );
    expect(bench.state.soundLevel?.calibrated).toBe(false);
    bench.keepNoise();
    bench.stop();
    await run;
    expect(bench.state.trouble).toBeNull();
    expect(bench.state.exposure.seconds).toBe(0);

    await until(bench, ({ saved }) => saved === 'saved');
    const stored = await store.load();
    if (stored === null || isTrouble(stored)) throw new Error('the session was not stored');
    expect(stored).toEqual(bench.state.document);
    expect(stored.noiseReadings.map(({ channel }) => channel)).toEqual(['FR']);
  });
});
