import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../components/theme/base.css';
import '../../../components/propose/subs/subs-sheet';
import { proposeView } from '../../../components/propose/propose-view';
import {
  confidenceText,
  delayText,
  whyNotProposed,
} from '../../../components/propose/subs/subs-words';
import { sayValue } from '../../../src/proposal/settings-list';
import type { FakeBench } from '../fake-bench';
import { layoutOf } from '../fake-bench';
import { layout524 } from '../fixtures';
import { find, findAll, mount, plain, settle, textOf } from '../mount';
import { sampleSheet } from '../patch/samples';
import { expectQuiet } from '../quiet';
import { benchWithBass } from './proposing-bench';

expectQuiet();

async function subsSheet(bench: FakeBench, width = 1060) {
  const view = () => proposeView(bench, bench.state, null);
  const sheet = await mount('ll-subs-sheet', { bench, view: view() }, width);
  bench.subscribe(() => Object.assign(sheet, { view: view() }));
  return sheet;
}

describe('the Subs sheet', () => {
  it('gives distance, level and polarity of each sub as they are typed', async () => {
    const bench = benchWithBass(layout524, 3);
    const sheet = await subsSheet(bench);
    const { proposal } = bench.state;
    for (const sub of proposal?.subs?.subs ?? []) {
      const typed = proposal?.channels.find(({ channel }) => channel === sub.channel);
      const cells = findAll(sheet, `tr[data-sub="${sub.channel}"] > *`).map((one) =>
        plain(one.textContent ?? ''),
      );
      expect(cells[0]).toBe(sub.channel);
      expect(cells[1]).toBe(typed?.distance ? plain(sayValue(typed.distance)) : 'cannot tell');
      expect(cells[2]).toBe(typed?.level ? plain(sayValue(typed.level)) : 'cannot tell');
      expect(cells[4]).toBe(sub.polarity);
    }
    expect(findAll(sheet, 'tr[data-sub]')).toHaveLength(2);
  });

  it('takes a bass preference, in decibels, as a choice of the session', async () => {
    const bench = benchWithBass(layout524);
    const sheet = await subsSheet(bench);
    const before = bench.state.proposal?.settings.trimDb['Sub 1'] ?? 0;
    const input = find<HTMLInputElement>(find(sheet, 'll-number'), 'input');
    await userEvent.fill(input, '3');
    await userEvent.keyboard('{Enter}');
    await settle(sheet);
    expect(bench.calls).toEqual(['Choose bass preference']);
    expect(bench.state.document.choices.bassPreferenceDb).toBe(3);
    expect((bench.state.proposal?.settings.trimDb['Sub 1'] ?? 0) - before).toBeCloseTo(3, 1);
  });

  it('offers low-pass and low cut in the steps of the processor’s sheet, and off', async () => {
    const processor = await sampleSheet(16);
    const bench = benchWithBass(layout524, 1, { sheet: processor });
    const sheet = await subsSheet(bench);
    const selects = findAll<HTMLSelectElement>(sheet, 'select');
    const cuts = [...(selects[1]?.options ?? [])].map(({ text }) => plain(text));
    expect(cuts[0]).toMatch(/^as proposed, /);
    expect(cuts.slice(1)).toEqual(['off', ...processor.lowCut.stepsHz.map((hz) => `${hz} Hz`)]);
    await userEvent.selectOptions(selects[1] ?? sheet, cuts[2]?.replace(' ', '\u202f') ?? '');
    await settle(sheet);
    expect(bench.calls).toEqual(['Choose low cut']);
    expect(bench.state.proposal?.settings.lowCutHz).toBe(processor.lowCut.stepsHz[0]);
  });

  it('says with whom they were set, how sure it is and what else would do', async () => {
    const bench = benchWithBass(layout524, 3);
    const sheet = await subsSheet(bench);
    const { alignment } = bench.state.proposal?.subs ?? {};
    if (!alignment) throw new RangeError('nothing is aligned');
    const said = textOf(find(sheet, 'll-sub-alignment'));
    expect(said).toContain(plain(confidenceText(alignment)));
    expect(said.split('costs at most')).toHaveLength(2);
    expect(said).toContain('by arrival alone, against both in phase; the deepest dip lies');
    for (const other of alignment.alternatives) expect(said).toContain(plain(delayText(other)));
  });

  it('uses another delay, turned over or not, and goes back to the proposal', async () => {
    const bench = benchWithBass(layout524, 3);
    const sheet = await subsSheet(bench);
    const rows = () =>
      findAll(find(sheet, 'll-sub-alignment'), 'tbody tr:has(td:last-child:not(.num))');
    const buttonIn = (row: Element | undefined) => row?.querySelector('button') ?? null;
    const { alternatives } = bench.state.proposal?.subs?.alignment ?? {};
    if (!alternatives?.length) throw new RangeError('nothing else would do');
    expect(rows()).toHaveLength(alternatives.length + 1);
    expect(textOf(rows()[0] ?? sheet)).toMatch(/^as proposed .* in force$/);
    for (const [n, one] of alternatives.entries()) {
      // Nearer than a quarter of a period of the crossover it would be the proposal itself.
      expect(one.turned || Math.abs(one.laterSeconds) > 1 / 800).toBe(true);
      buttonIn(rows()[n + 1])?.click();
      await settle(sheet);
      const { subsLaterSeconds, subsTurned } = bench.state.document.choices;
      expect(subsLaterSeconds).toBe(one.laterSeconds);
      expect(subsTurned).toBe(one.turned);
      expect(textOf(rows()[n + 1] ?? sheet)).toContain('in force');
      const { alignment } = bench.state.proposal?.subs ?? {};
      expect(alignment?.sum.lossDb).toBeCloseTo(one.lossDb, 2);
      expect(alignment?.alternatives).toHaveLength(alternatives.length);
    }
    buttonIn(rows()[0])?.click();
    await settle(sheet);
    expect(bench.state.document.choices).toMatchObject({ subsLaterSeconds: 0, subsTurned: false });
  });

  it('says why what loses less is not proposed', () => {
    const other = { laterSeconds: 0.004, turned: false, lossDb: 0.5, fits: true, farther: false };
    const sum = { lossDb: 1, dipDb: -3, dipHz: 80, worst: { channel: 'FC', lossDb: 1 } } as const;
    const groups = [{ group: 'centre', sum }] as const;
    const told = { asProposedLossDb: 0.7, groups };
    expect(whyNotProposed(other, told)).toContain('more with all groups together');
    expect(whyNotProposed(other, { ...told, groups: [] })).toContain('rounded');
    expect(whyNotProposed({ ...other, fits: false }, told)).toContain('do not reach');
    expect(whyNotProposed({ ...other, farther: true }, told)).toContain('lies farther');
    expect(whyNotProposed({ ...other, lossDb: 0.72 }, told)).toBeNull();
  });

  it('says what a layout without a sub must do', async () => {
    const sheet = await subsSheet(benchWithBass(layoutOf('5.0')));
    expect(textOf(sheet)).toContain('Without a sub nobody takes its bass');
  });
});

describe('the words for the subs', () => {
  it('say a delay with its direction, and that it is turned over', () => {
    expect(plain(delayText({ laterSeconds: -0.0072, turned: true }))).toBe(
      '7.20 ms earlier, turned over',
    );
    expect(plain(delayText({ laterSeconds: 0.0004, turned: false }))).toBe('0.40 ms later');
  });
});
