import { describe, expect, it } from 'vitest';
import { judgeProof } from '../../../../src/proof/judge-proof';
import type { Proof } from '../../../../src/proof/proof';
import type { ProofInput } from '../../../../src/proof/proof-case';
import { defaultProcessorSteps } from '../../../../src/proposal/default-processor-steps';
import { factorySettings } from '../../../../src/system/processor-settings';
import { sampleDocument, sampleTake } from '../../../components/sample-session';
import { makeBench, until } from '../make-bench';

const probe = sampleTake('2.1');
const settings = { ...factorySettings, trimDb: { FR: -1 }, crossoverHz: { fronts: null } };
const prove = (id: string) =>
  ({ ...probe, id, purpose: 'prove', proves: { id, settings } }) as const;

/** A bench with a take that proves; what is judged waits for its answer. */
function benchThatJudges() {
  const asked: {
    readonly input: ProofInput;
    readonly signal: AbortSignal;
    readonly answer: (proof: Proof | null) => void;
  }[] = [];
  const { bench } = makeBench(
    {
      judge: (input, signal) =>
        new Promise((resolve) => asked.push({ input, signal, answer: resolve })),
    },
    { ...sampleDocument('2.1'), takes: [probe, prove('first')] },
  );
  const again = (): void =>
    bench.change('Choose another processor', (document) => ({
      ...document,
      processor: { ...defaultProcessorSteps, levelStepDb: 1 },
    }));
  return { bench, asked, again };
}

describe('judging beside the screen', () => {
  it('shows no proof until takes are judged, and then that one', async () => {
    const { bench, asked } = benchThatJudges();
    expect(bench.state.proving?.id).toBe('first');
    expect(bench.state.proof).toBeNull();
    const [order] = asked;
    if (!order) throw new Error('nothing is judged');
    order.answer(judgeProof(order.input));
    const { proof } = await until(bench, (state) => state.proof !== null);
    expect(proof).toMatchObject({ id: 'first', typed: settings, readings: probe.readings });
    expect(proof).toMatchObject(judgeProof(order.input));
  });

  it('breaks off what newer ground has overtaken, and never shows it', async () => {
    const { bench, asked, again } = benchThatJudges();
    again();
    const [stale, newest] = asked;
    if (!stale || !newest) throw new Error('nothing is judged again');
    expect(stale.signal.aborted).toBe(true);
    stale.answer({ ...judgeProof(stale.input), notes: ['stale'] });
    await Promise.resolve();
    expect(bench.state.proof).toBeNull();
    newest.answer(judgeProof(newest.input));
    const { proof } = await until(bench, (state) => state.proof !== null);
    expect(proof?.notes).not.toContain('stale');
    expect(newest.input.steps.levelStepDb).toBe(1);
  });

  it('keeps a proof for changes that it does not rest on', async () => {
    const { bench, asked } = benchThatJudges();
    asked[0]?.answer(judgeProof(asked[0].input));
    const { proof } = await until(bench, (state) => state.proof !== null);
    bench.change('Tick a line', (document) => ({ ...document, typed: { 'level FL': '0.0 dB' } }));
    expect(bench.state.proof).toBe(proof);
    expect(asked).toHaveLength(1);
  });

  it('says so when it failed', async () => {
    const { bench, asked } = benchThatJudges();
    asked[0]?.answer(null);
    const { trouble } = await until(bench, (state) => state.trouble !== null);
    expect(trouble?.sentence).toContain('could not be judged');
    expect(bench.state.proof).toBeNull();
  });
});
