import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../../components/theme/base.css';
import '../../../../components/probe/routing/routing-table';
import { plugRows, previewSentence } from '../../../../components/probe/routing/route-preview';
import type { BenchState } from '../../../../src/session/bench';
import type { SessionDocument } from '../../../../src/session/document';
import { planTake } from '../../../../src/take/plan-take';
import { isTrouble } from '../../../../src/trouble';
import { FakeBench, layoutOf } from '../../fake-bench';
import { find, findAll, mount, plain, settle, textOf } from '../../mount';
import { expectQuiet } from '../../quiet';
import { sampleDocument } from '../../sample-session';

expectQuiet();

function liveBench(layout: string, outputs: number, live: Partial<SessionDocument['live']> = {}) {
  const bench = new FakeBench(layout, {
    abilities: {
      kind: 'live',
      name: 'invented',
      simulated: false,
      outputs,
      inputs: 2,
      sampleRate: 48_000,
      unknown: [],
    },
  });
  const { document } = bench.state;
  bench.set({ document: { ...document, rig: 'live', live: { ...document.live, ...live } } });
  return bench;
}

const preview = (state: BenchState) => plain(previewSentence(state));

describe('the preview of a routing', () => {
  it('needs one take and no plug when every speaker has an output', () => {
    expect(preview(liveBench('7.1', 8).state)).toBe(
      '8 speakers on 8 outputs: 1 take, no plug to move.',
    );
  });

  it('counts takes and plugs when there are more speakers than outputs', () => {
    expect(preview(liveBench('7.1.4', 8).state)).toBe(
      '12 speakers on 8 outputs: 2 takes, 4 plugs to move.',
    );
  });

  it('counts the subs that share an output', () => {
    const state = liveBench('5.2', 8, { routes: { 'Sub 1': 3, 'Sub 2': 3 } }).state;
    expect(preview(state)).toMatch(/^7 speakers on 8 outputs: 2 takes, .*2 speakers to switch off/);
  });

  it('says why a routing cannot be', () => {
    const state = liveBench('5.1', 2, { routes: { FC: 6 } }).state;
    const plan = planTake(state.layout, state.document.take, {
      outputs: 2,
      routes: { FC: 6 },
      lfeOutput: null,
    });
    if (!isTrouble(plan)) throw new RangeError('output 7 of 2 was planned');
    expect(preview(state)).toBe(plain(plan.sentence));
  });

  it('lists what each output plays in each take, with the plugs that move', () => {
    const { take } = sampleDocument('7.1.4');
    const plan = planTake(layoutOf('7.1.4'), take, { outputs: 8, routes: {}, lfeOutput: null });
    if (isTrouble(plan)) throw new RangeError(plan.sentence);
    const rows = plugRows(plan.parts);
    expect(rows.map(({ output }) => output)).toEqual([0, 1, 2, 3, 4, 5, 6, 7]);
    expect(rows[0]?.cells.map(({ channel, moved }) => [channel, moved])).toEqual([
      ['FL', false],
      ['FL', false],
    ]);
    const moved = rows.flatMap(({ cells }) => cells).filter((cell) => cell.moved);
    expect(moved.map(({ channel }) => channel)).toEqual(['TpFL', 'TpFR', 'TpBL', 'TpBR']);
  });
});

describe('the routing table', () => {
  it('puts a speaker on an output and leaves it to the rig again', async () => {
    const bench = liveBench('5.1', 8);
    const table = await mount('ll-routing-table', { bench });
    const select = find<HTMLSelectElement>(table, '[aria-label^="Output of FC"]');
    await userEvent.selectOptions(select, 'output 3');
    expect(bench.calls).toEqual(['Route FC']);
    expect(bench.state.document.live.routes).toEqual({ FC: 2 });
    await settle(table);
    await userEvent.selectOptions(select, 'automatic');
    expect(bench.state.document.live.routes).toEqual({});
  });

  it('lets several speakers share one, and clears them all', async () => {
    const bench = liveBench('5.2', 8);
    const table = await mount('ll-routing-table', { bench });
    for (const label of ['Sub 1', 'Sub 2']) {
      const select = find<HTMLSelectElement>(table, `[aria-label^="Output of ${label}"]`);
      await userEvent.selectOptions(select, 'output 4');
    }
    await settle(table);
    expect(bench.state.document.live.routes).toEqual({ 'Sub 1': 3, 'Sub 2': 3 });
    expect(textOf(table)).toContain('2 takes');
    await userEvent.click(find(table, 'button'));
    expect(bench.state.document.live.routes).toEqual({});
  });

  it('notes the LFE output and says what its 10 dB do', async () => {
    const bench = liveBench('5.1', 6);
    const table = await mount('ll-routing-table', { bench });
    const select = findAll<HTMLSelectElement>(table, 'select').at(-1);
    if (!select) throw new RangeError('no LFE picker');
    await userEvent.selectOptions(select, 'output 4');
    expect(bench.state.document.live.lfeOutput).toBe(3);
    expect(textOf(table)).toContain('10 dB quieter');
  });

  it('keeps an output in sight that this device does not have', async () => {
    const bench = liveBench('5.1', 2, { routes: { FC: 6 } });
    const table = await mount('ll-routing-table', { bench });
    const select = find<HTMLSelectElement>(table, '[aria-label^="Output of FC"]');
    expect(plain(select.selectedOptions[0]?.textContent ?? '')).toBe('output 7, not there');
  });

  it('says that 8 outputs are only reckoned with before the browser has told', async () => {
    const bench = liveBench('5.1', 8);
    bench.set({ abilities: null });
    const table = await mount('ll-routing-table', { bench }, 360);
    expect(textOf(table)).toContain('Reckoned with 8 outputs');
    expect(table.scrollWidth).toBeLessThanOrEqual(360);
  });
});
