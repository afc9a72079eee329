import { describe, expect, it } from 'vitest';
import { isOldProof } from '../../../src/session/derive-proof';
import { makeBench } from './make-bench';

/** A practice room of three speakers, read, its settings worked out. */
async function readRoom(slips: Parameters<typeof makeBench>[1] = {}) {
  const { bench } = makeBench({}, { layout: '2.1', ...slips });
  await bench.startTake();
  // The sums follow by themselves.
  await new Promise((resolve) => setTimeout(resolve, 0));
  expect(bench.state.proposal?.sums).toBe('there');
  return bench;
}

describe('a proof on the bench', () => {
  it('of settings typed right fails nothing, and leaves what was read before alone', async () => {
    const bench = await readRoom();
    const { readings, proposal, toRepeat } = bench.state;
    await bench.startProof();
    const { proof, document, trouble } = bench.state;
    expect(trouble).toBeNull();
    expect(proof?.lines.filter(({ verdict }) => verdict === 'fail')).toEqual([]);
    expect(proof?.counts.pass ?? 0).toBeGreaterThan(10);
    expect(bench.state.readings).toBe(readings);
    expect(bench.state.proposal).toBe(proposal);
    expect(bench.state.toRepeat).toBe(toRepeat);
    expect(proof?.before).toBe(readings);
    const [probe, prove] = document.takes;
    expect(document.takes).toHaveLength(2);
    expect(probe?.purpose).toBeUndefined();
    expect(prove).toMatchObject({ purpose: 'prove', proves: { id: proof?.id } });
    expect(prove?.inForce).toBeUndefined();
    expect(prove?.readings?.inForce).toBeUndefined();
    // The sub is reached through LFE.
    const gains = prove?.schedule.segments.map(({ replayGainDb }) => replayGainDb);
    expect(gains).toEqual([0, 0, 10]);
    expect(isOldProof(bench.state)).toBe(false);
  });

  it('finds a hidden slip, and proves a failed line again alone once it is mended', async () => {
    const bench = await readRoom({
      practice: {
        seed: 4,
        hidden: null,
        gainDb: 0,
        slips: [{ kind: 'wrong unit', taken: 'feet', channels: ['FR'] }],
      },
    });
    await bench.startProof();
    const failed = bench.state.proof?.lines.find(({ id }) => id === 'arrival FR');
    expect(failed).toMatchObject({ verdict: 'fail', slip: 'feet for metres' });
    const first = bench.state.proof?.id;
    bench.change('mend', (document) => ({
      ...document,
      practice: { ...document.practice, slips: [] },
    }));
    await bench.startProof(failed?.channels);
    const { proof, document } = bench.state;
    expect(document.takes.at(-1)?.schedule.channels).toEqual(['FL', 'FR']);
    expect(proof?.id).toBe(first);
    expect(proof?.readings.joined).toHaveLength(2);
    expect(proof?.lines.find(({ id }) => id === 'arrival FR')?.verdict).toBe('pass');
    // The reference speaker alone proves nothing: all are played again, as a new proof.
    await bench.startProof(['FL']);
    expect(bench.state.document.takes.at(-1)?.schedule.channels).toHaveLength(3);
    expect(bench.state.proof?.id).not.toBe(first);
    expect(bench.state.proof?.readings.joined).toHaveLength(0);
  });

  it('is of old settings once others are chosen', async () => {
    const bench = await readRoom();
    await bench.startProof();
    const { proof } = bench.state;
    bench.change('choose', (document) => ({ ...document, chosenCrossoverHz: { fronts: 200 } }));
    await new Promise((resolve) => setTimeout(resolve, 0));
    expect(bench.state.proof).toBe(proof);
    expect(isOldProof(bench.state)).toBe(true);
  });

  it('needs no subs', async () => {
    const bench = await readRoom({ layout: '2.0' });
    await bench.startProof();
    const claims = bench.state.proof?.lines.map(({ claim }) => claim) ?? [];
    expect(bench.state.proof?.counts.fail).toBe(0);
    expect(claims).toContain('arrival');
    for (const claim of ['crossover', 'redirected bass', 'LFE'])
      expect(claims).not.toContain(claim);
  });

  it('needs settings', async () => {
    const { bench } = makeBench({}, { layout: '2.1' });
    await bench.startProof();
    expect(bench.state.trouble?.sentence).toContain('no settings to prove');
    expect(bench.state.proof).toBeNull();
  });
});
