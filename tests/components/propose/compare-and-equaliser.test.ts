import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../components/theme/base.css';
import '../../../components/propose/compare/compare-sheet';
import { compareCopy, compareRows } from '../../../components/propose/compare/compare-rows';
import '../../../components/propose/equaliser/equaliser-sheet';
import { proposeView } from '../../../components/propose/propose-view';
import { noChoices } from '../../../src/proposal/choices';
import type { FakeBench } from '../fake-bench';
import { layout524 } from '../fixtures';
import { find, findAll, mount, plain, settle, textOf } from '../mount';
import { expectQuiet } from '../quiet';
import { benchWithBass } from './proposing-bench';

expectQuiet();

async function shown(
  name: 'll-compare-sheet' | 'll-equaliser-sheet',
  bench: FakeBench,
): Promise<HTMLElement> {
  const view = () => proposeView(bench, bench.state, null);
  const sheet = await mount(name, { bench, view: view() }, 1060);
  bench.subscribe(() => Object.assign(sheet, { view: view() }));
  return sheet;
}

describe('the Compare sheet', () => {
  it('lays both sets side by side, marks what differs, and goes back to the proposed one', async () => {
    const bench = benchWithBass(layout524, 2, { chosenCrossoverHz: { sides: 150 } });
    const sheet = await shown('ll-compare-sheet', bench);
    const marked = findAll(sheet, 'tr.pick').map((one) => textOf(one));
    const [sides] = marked;
    expect(sides).toMatch(/^Surrounds \d+ Hz 150 Hz , differs$/);
    const check = find<HTMLInputElement>(find(sheet, 'll-check'), 'input');
    check.focus();
    await userEvent.keyboard(' ');
    await settle(sheet);
    const rows = findAll(sheet, 'tbody tr:not(.part)');
    expect(rows).toHaveLength(marked.length);
    await userEvent.click(find(sheet, 'button.ghost'));
    await settle(sheet);
    expect(bench.calls).toEqual(['Keep everything proposed']);
    expect(bench.state.document.chosenCrossoverHz).toEqual({});
    expect(textOf(sheet)).toContain('You keep to everything that is proposed.');
  });

  it('copies both sets with plain signs', () => {
    const bench = benchWithBass(layout524);
    const view = proposeView(bench, bench.state, null);
    if (!view) throw new RangeError('nothing is proposed');
    const rows = compareRows(view);
    const lines = compareCopy(rows).trim().split('\n');
    expect(lines).toHaveLength(rows.length + 1);
    expect(lines.every((line) => line.split('\t').length === 3)).toBe(true);
    expect(lines.join()).not.toMatch(/[\u2212\u202f]|NaN/);
    expect(rows.some(({ differs }) => differs)).toBe(false);
  });
});

describe('the Equaliser sheet', () => {
  it('is off until it is wanted', async () => {
    const bench = benchWithBass(layout524, 2);
    const sheet = await shown('ll-equaliser-sheet', bench);
    expect(findAll(sheet, '[data-equaliser]')).toEqual([]);
    find<HTMLInputElement>(find(sheet, 'll-check'), 'input').click();
    await settle(sheet);
    expect(bench.state.document.choices.equaliserBands).toBe(3);
    const channels = bench.state.proposal?.equaliser?.channels ?? [];
    expect(channels.length).toBeGreaterThan(0);
    expect(findAll(sheet, '[data-equaliser]')).toHaveLength(channels.length);
    for (const { channel, bands, beforeDb } of channels) {
      const part = find(sheet, `[data-equaliser="${channel}"]`);
      expect(part.querySelectorAll('tbody tr')).toHaveLength(bands.length);
      expect(plain(part.textContent)).toContain(`Seat 2 ${(beforeDb[1] ?? 0).toFixed(1)} →`);
    }
  });

  it('takes another number of bands, and none', async () => {
    const bench = benchWithBass(layout524, 1, { choices: { ...noChoices, equaliserBands: 2 } });
    const sheet = await shown('ll-equaliser-sheet', bench);
    const input = find<HTMLInputElement>(find(sheet, 'll-number'), 'input');
    await userEvent.fill(input, '1');
    await userEvent.keyboard('{Enter}');
    await settle(sheet);
    const most = Math.max(
      ...(bench.state.proposal?.equaliser?.channels.map(({ bands }) => bands.length) ?? [9]),
    );
    expect(most).toBeLessThanOrEqual(1);
    find<HTMLInputElement>(find(sheet, 'll-check'), 'input').click();
    await settle(sheet);
    expect(bench.calls.at(-1)).toBe('Switch equaliser advice off');
    expect(bench.state.proposal?.equaliser).toBeNull();
  });
});
