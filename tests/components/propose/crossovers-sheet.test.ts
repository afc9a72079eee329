import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../components/theme/base.css';
import type { CrossoversSheet } from '../../../components/propose/crossovers/crossovers-sheet';
import '../../../components/propose/crossovers/crossovers-sheet';
import { proposeView } from '../../../components/propose/propose-view';
import type { ChannelLabel } from '../../../src/system/channel';
import type { FakeBench } from '../fake-bench';
import { layout524 } from '../fixtures';
import { dbText } from '../../../src/locale/number-text';
import { find, findAll, mount, plain, settle, textOf } from '../mount';
import { sampleSheet } from '../patch/samples';
import { expectQuiet } from '../quiet';
import { benchWithBass } from './proposing-bench';

expectQuiet();

/** The sheet as the stage feeds it: a new view after every change. */
async function sheetOf(bench: FakeBench, selected: ChannelLabel | null = 'SiL', width = 1100) {
  const view = () => proposeView(bench, bench.state, selected);
  const sheet = (await mount(
    'll-crossovers-sheet',
    { bench, view: view() },
    width,
  )) as CrossoversSheet;
  bench.subscribe(() => (sheet.view = view()));
  const picked: (ChannelLabel | null)[] = [];
  sheet.addEventListener('ll-select', (event) => picked.push(event.detail));
  return { sheet, picked };
}

const step = (sheet: Element, value: number | string) =>
  find<HTMLInputElement>(sheet, `tr[data-step="${value}"] input`);
const handleOf = (sheet: Element, id: string) => find(sheet, `[data-handle=${id}]`);
const sidesOf = (bench: FakeBench) => {
  const found = bench.state.proposal?.groups.find(({ group }) => group === 'sides');
  if (!found?.crossoverHz) throw new RangeError('the sides have no crossover');
  return { ...found, crossoverHz: found.crossoverHz };
};

/** Input elements that have been ticked, as a person sees it in the table. */
const ticked = (sheet: Element) =>
  findAll<HTMLInputElement>(find(sheet, 'll-crossover-steps'), 'input')
    .filter(({ checked }) => checked)
    .map((input) => plain(input.closest('label')?.textContent ?? ''));

describe('the crossovers sheet', () => {
  it('draws the speaker, the subs, their sum at every seat, fit and filters', async () => {
    const { sheet } = await sheetOf(benchWithBass(layout524, 3));
    const names = findAll(sheet, 'path.trace[data-name]').map((one) => one.dataset['name']);
    expect(names.toSorted()).toEqual(
      [
        'Sum, mean of seats',
        'at Seat 1',
        'at Seat 2',
        'at Seat 3',
        'SiL measured',
        'SiL fit',
        'Subs',
        'High-pass',
        'Low-pass',
      ].toSorted(),
    );
    expect(findAll(sheet, 'path.fit-band')).toHaveLength(1);
  });

  it('leaves filters and seats out on demand', async () => {
    const { sheet } = await sheetOf(benchWithBass(layout524, 2));
    for (const words of ['Filters', 'Each seat']) {
      const button = findAll<HTMLButtonElement>(sheet, '.bar button').find(
        (one) => plain(one.textContent ?? '') === words,
      );
      button?.click();
    }
    await settle(sheet);
    const names = findAll(sheet, 'path.trace[data-name]').map((one) => one.dataset['name']);
    expect(names).not.toContain('High-pass');
    expect(names).not.toContain('at Seat 2');
  });

  it('lists every step with margin, dip and loss, and names the rules', async () => {
    const bench = benchWithBass(layout524, 2);
    const { sheet } = await sheetOf(bench);
    const { alternatives, crossoverHz, decidedBy } = sidesOf(bench);
    findAll<HTMLButtonElement>(find(sheet, 'll-crossover-steps'), 'button').at(0)?.click();
    await settle(sheet);
    const rows = findAll(find(sheet, 'll-crossover-steps'), 'tbody tr');
    expect(rows).toHaveLength(alternatives.length + 1);
    const proposed = alternatives.find(({ stepHz }) => stepHz === crossoverHz);
    const cells = findAll(sheet, `tr[data-step="${crossoverHz}"] td`).map((one) =>
      plain(one.textContent ?? ''),
    );
    expect(cells[1]).toBe(String(Math.round(proposed?.marginHz ?? 0)).replace('-', '−'));
    expect(cells[2]).toBe((proposed?.sum?.dipDb ?? 0).toFixed(1).replace('-', '−'));
    expect(cells[3]).toBe((proposed?.sum?.lossDb ?? 0).toFixed(1));
    expect(cells[4]).toMatch(/^proposed/);
    expect(textOf(find(sheet, 'll-why-crossover'))).toContain('−6 dB point');
    expect(decidedBy).toMatch(/^Si[LR]$/);
    const dip = plain(dbText(-(proposed?.sum?.dipDb ?? 0)));
    expect(textOf(find(sheet, 'll-why-crossover'))).toContain(
      `the deepest dip lies ${dip} below that`,
    );
    expect(textOf(find(sheet, 'll-workbench'))).toMatch(
      /Against both in phase: .* held against speaker and subs in phase instead/,
    );
  });

  it('sets another crossover by the table, says its price, and takes it back', async () => {
    const bench = benchWithBass(layout524);
    const { sheet } = await sheetOf(bench);
    const { crossoverHz } = sidesOf(bench);
    step(sheet, 60).click();
    await settle(sheet);
    expect(bench.state.document.chosenCrossoverHz).toEqual({ sides: 60 });
    expect(bench.calls).toEqual(['Choose crossover']);
    expect(textOf(find(sheet, '.price'))).toMatch(
      /^You set 60 Hz ?\. 60\sHz is under the measured rule/,
    );
    expect(findAll(sheet, '[data-proposed=crossover]')).toHaveLength(1);
    expect(find(sheet, '.price button').textContent).toContain(String(crossoverHz));
    await userEvent.click(find(sheet, '.price button'));
    await settle(sheet);
    expect(bench.state.document.chosenCrossoverHz).toEqual({});
    expect(findAll(sheet, '.price')).toEqual([]);
  });

  it('keeps no choice when the handle comes back to the proposed step', async () => {
    const bench = benchWithBass(layout524);
    const { sheet } = await sheetOf(bench);
    handleOf(sheet, 'crossover').focus();
    await userEvent.keyboard('{ArrowRight}');
    await settle(sheet);
    expect(Object.keys(bench.state.document.chosenCrossoverHz)).toEqual(['sides']);
    await userEvent.keyboard('{ArrowLeft}');
    await settle(sheet);
    expect(bench.state.document.chosenCrossoverHz).toEqual({});
    expect(bench.calls).toEqual(['Choose crossover', 'Choose crossover']);
  });

  it('redraws sum and ledger while a handle is held, and changes the session once', async () => {
    const bench = benchWithBass(layout524, 2);
    const { sheet } = await sheetOf(bench);
    const sum = () => find(sheet, 'path[data-name="Sum, mean of seats"]').getAttribute('d');
    const bar = () => textOf(find(sheet, 'tr[data-line=SiL]'));
    const before = [sum(), bar()];
    const hold = (value: number, done: boolean) =>
      find(sheet, 'll-workbench-chart').dispatchEvent(
        new CustomEvent('ll-move', {
          detail: { id: 'crossover', value, done },
          bubbles: true,
          composed: true,
        }),
      );
    hold(200, false);
    await settle(sheet);
    expect(bench.calls).toEqual([]);
    expect(sum()).not.toBe(before[0]);
    expect(bar()).not.toBe(before[1]);
    expect(ticked(sheet)).toEqual(['200 Hz']);
    hold(150, false);
    hold(120, true);
    await settle(sheet);
    expect(bench.calls).toEqual(['Choose crossover']);
    expect(bench.state.document.chosenCrossoverHz).toEqual({ sides: 120 });
  });

  it('moves the sub low-pass by its handle, never below the highest crossover of the bed', async () => {
    const sheetOfProcessor = await sampleSheet(11);
    const bench = benchWithBass(layout524, 1, { sheet: sheetOfProcessor });
    const { sheet } = await sheetOf(bench);
    const handle = handleOf(sheet, 'low-pass');
    handle.focus();
    await userEvent.keyboard('{Home}');
    await settle(sheet);
    const { settings } = bench.state.proposal ?? {};
    const bed = Object.entries(settings?.crossoverHz ?? {}).flatMap(([group, hz]) =>
      group.endsWith('heights') ? [] : (hz ?? []),
    );
    expect(bench.calls).toEqual(['Choose sub low-pass']);
    expect(settings?.subLowPassHz).toBeGreaterThanOrEqual(Math.max(...bed));
  });

  it('moves all subs in time by the slider, in steps of the processor', async () => {
    const bench = benchWithBass(layout524);
    const { sheet } = await sheetOf(bench);
    const before = bench.state.proposal?.settings;
    const slider = find<HTMLInputElement>(find(sheet, 'll-step-slider'), 'input');
    slider.focus();
    await userEvent.keyboard('{ArrowRight}{ArrowRight}');
    await settle(sheet);
    const { distanceStepMetres } = bench.state.document.processor;
    const metres = (settings = before) => settings?.distanceMetres['Sub 1'] ?? 0;
    expect(bench.calls).toEqual(['Move the subs in time', 'Move the subs in time']);
    const { subsLaterSeconds } = bench.state.document.choices;
    const speed = before?.metresPerSecond ?? 0;
    expect(subsLaterSeconds * speed).toBeCloseTo(2 * distanceStepMetres, 9);
    expect(metres() - metres(bench.state.proposal?.settings)).toBeCloseTo(
      2 * distanceStepMetres,
      9,
    );
    expect(textOf(find(sheet, 'll-step-slider'))).toContain('ms later');
  });

  it('runs a group full range by choice, and back', async () => {
    const bench = benchWithBass(layout524);
    const { sheet } = await sheetOf(bench, 'FL');
    step(sheet, 'full range').click();
    await settle(sheet);
    expect(bench.state.document.choices.fullRange).toEqual(['fronts']);
    expect(findAll(sheet, '[data-handle=crossover]')).toEqual([]);
    expect(textOf(find(sheet, '.price'))).toContain('two-channel music leaves the subs silent');
    await userEvent.click(find(sheet, '.price button'));
    await settle(sheet);
    expect(bench.state.document.choices.fullRange).toEqual([]);
    expect(findAll(sheet, '[data-handle=crossover]')).toHaveLength(1);
  });

  it('sets all groups at once where the processor has one crossover for all', async () => {
    const sheet11 = await sampleSheet(11);
    const one = {
      ...sheet11,
      crossover: { ...sheet11.crossover, setting: 'one for all' as const },
    };
    const bench = benchWithBass(layout524, 1, { sheet: one });
    const { sheet } = await sheetOf(bench);
    handleOf(sheet, 'crossover').focus();
    await userEvent.keyboard('{Home}');
    await settle(sheet);
    const set = Object.values(bench.state.proposal?.settings.crossoverHz ?? {});
    expect(new Set(set).size).toBe(1);
    expect(Object.keys(bench.state.document.chosenCrossoverHz)).toHaveLength(5);
  });

  it('shows another group on demand, its deciding speaker in front', async () => {
    const bench = benchWithBass(layout524);
    const { sheet, picked } = await sheetOf(bench);
    findAll<HTMLInputElement>(find(sheet, 'll-choice'), 'input')[1]?.click();
    expect(picked).toEqual(['FC']);
  });

  it('zooms to the crossover, and keeps the cursor and numbers', async () => {
    const { sheet } = await sheetOf(benchWithBass(layout524));
    const wide = findAll(find(sheet, 'll-workbench-chart'), 'text.tick').map(
      (one) => one.textContent,
    );
    const zoom = findAll<HTMLButtonElement>(sheet, '.bar button').find((one) =>
      plain(one.textContent ?? '').startsWith('About'),
    );
    zoom?.click();
    await settle(sheet);
    expect(zoom?.getAttribute('aria-pressed')).toBe('true');
    const near = findAll(find(sheet, 'll-workbench-chart'), 'text.tick').map(
      (one) => one.textContent,
    );
    expect(near).not.toEqual(wide);
    expect(near).not.toContain('20');
    expect(findAll(sheet, 'll-copy-button').length).toBeGreaterThan(0);
  });
});
