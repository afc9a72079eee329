import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../../components/theme/base.css';
import '../../../../components/probe/take/rolloff-findings';
import type { RolloffTogether } from '../../../../src/reading/rolloff-together';
import type { Readings } from '../../../../src/reading/reading';
import type { SessionDocument } from '../../../../src/session/document';
import {
  inventedBass,
  inventedRolloff,
  inventedTogether,
} from '../../../src/reading/told-together';
import { benchWith } from '../../bench-of';
import type { FakeBench } from '../../fake-bench';
import { inventedReadings, layout19, layout524 } from '../../fixtures';
import { find, findAll, mount, notNumbers, plain, settle, textOf } from '../../mount';
import { expectQuiet } from '../../quiet';

expectQuiet();

const pair = inventedTogether(['FL', 'FR'], inventedRolloff(44));

function benchOf(
  together: readonly RolloffTogether[],
  changes: Partial<SessionDocument> = {},
  readings: Readings = inventedReadings(layout524),
): FakeBench {
  const bench = benchWith(layout524, readings, changes);
  bench.set({ together });
  return bench;
}

const shown = (bench: FakeBench, width = 700) => mount('ll-rolloff-findings', { bench }, width);

const rowOf = (root: Element, model: string): string[] => {
  const head = findAll(root, 'tbody th').find((one) => plain(one.textContent ?? '') === model);
  return findAll(head?.parentElement ?? root, 'td').map((one) => plain(one.textContent ?? ''));
};

function field(root: Element, label: string): HTMLInputElement {
  return find<HTMLInputElement>(find(root, `ll-typed-number[label="${label}"]`), 'input');
}

async function open(root: HTMLElement): Promise<void> {
  await userEvent.click(find(root, 'summary'));
  await settle(root);
}

describe('roll-offs read together', () => {
  it('stand beside what each speaker gives alone, with their intervals and from what', async () => {
    const sheet = await shown(benchOf([pair]));
    const [from, f3, f6, f10, alone] = rowOf(sheet, 'FL FR');
    expect(from).toBe('3 seats and 2 speakers');
    // 44 Hz and 0.76 and 0.58 of it, each within 10 %.
    expect([f3, f6, f10]).toEqual(['44 Hz, 40–48', '33 Hz, 30–37', '26 Hz, 23–28']);
    expect(alone).toMatch(/FL \d+ Hz, \d+–\d+.*FR \d+ Hz, \d+–\d+/);
    const [fromCentre, centre] = rowOf(sheet, 'FC');
    expect([fromCentre, centre]).toEqual(['one reading alone', '–']);
  });

  it('say what cannot be, and what is doubtful', async () => {
    const high = inventedTogether(['SiL', 'SiR'], inventedRolloff(140), { sheetF3Hz: 60 });
    const note = 'The roll-off is uncertain. A reading close to the driver would settle it.';
    const doubtful = inventedTogether(['FC'], inventedRolloff(71), { notes: [note] });
    const sheet = await shown(benchOf([pair, high, doubtful]));
    const signals = findAll(sheet, 'p.signal').map((one) => plain(one.textContent ?? ''));
    expect(signals.length).toBe(3);
    expect(signals[0]).toMatch(/^By the sheet SiL, SiR would be 3 dB down at 60 Hz/);
    expect(signals[1]).toMatch(/^SiL alone is 6 dB down .* say that it is another model\.$/);
    expect(signals[2]).toMatch(/^SiR alone/);
    expect(textOf(sheet)).toContain(`FC: ${note}`);
  });

  it('say why there are none in older sessions, and nothing where there is bass', async () => {
    expect(textOf(await shown(benchOf([])))).toContain('Repeat the take at full range');
    const readings = inventedReadings(layout524);
    const channels = readings.channels.map((one) => ({ ...one, bassBands: inventedBass() }));
    const sheet = await shown(benchOf([], {}, { ...readings, channels }));
    expect(textOf(sheet)).not.toContain('Repeat the take');
  });

  it('are hidden close to a speaker and without readings', async () => {
    const position = { id: 'near', name: 'Close to FL', kind: 'close' } as const;
    expect((await shown(benchOf([pair], { position }))).hidden).toBe(true);
    const bench = benchOf([pair]);
    bench.set({ readings: null });
    expect((await shown(bench)).hidden).toBe(true);
  });

  it('fit every width, and hold nothing that is no number', async () => {
    const readings = inventedReadings(layout19);
    for (const width of [340, 700]) {
      const bench = benchWith(layout19, readings);
      bench.set({ together: [pair] });
      const sheet = await shown(bench, width);
      await open(sheet);
      expect(notNumbers(sheet)).toEqual([]);
      expect(sheet.scrollWidth).toBeLessThanOrEqual(width);
    }
  });
});

describe('models and sheets', () => {
  it('take a sheet’s value by keyboard, refuse what no sheet says, and take it back', async () => {
    const bench = benchOf([pair]);
    const sheet = await shown(bench);
    find(sheet, 'summary').focus();
    await userEvent.keyboard('{Enter}');
    await settle(sheet);
    const typed = field(sheet, 'Sheet’s −3 dB of FL and FR');
    await userEvent.fill(typed, '62,5');
    await userEvent.keyboard('{Enter}');
    await settle(sheet);
    expect(bench.state.document.models.sheetF3Hz).toEqual({ FL: 62.5 });
    await userEvent.fill(typed, '900');
    await userEvent.keyboard('{Enter}');
    await settle(sheet);
    expect(bench.state.document.models.sheetF3Hz).toEqual({ FL: 62.5 });
    expect(textOf(sheet)).toContain('lies between 10 and 400 Hz');
    await userEvent.fill(typed, '');
    await userEvent.keyboard('{Enter}');
    await settle(sheet);
    expect(bench.state.document.models.sheetF3Hz).toEqual({});
  });

  it('join a group to another, part it, and bring it back', async () => {
    const bench = benchOf([pair]);
    const sheet = await shown(bench);
    await open(sheet);
    const select = find<HTMLSelectElement>(sheet, 'select[data-group="sides"]');
    const words = [...select.options].map(({ text }) => plain(text));
    expect(words.slice(0, 4)).toEqual(['of one model', 'each its own', 'as fronts', 'as centre']);
    const choose = async (text: string): Promise<void> => {
      const option = [...select.options].find((one) => plain(one.text) === text);
      await userEvent.selectOptions(select, option ?? []);
      await settle(sheet);
    };
    await choose('as fronts');
    expect(bench.state.document.models.sameAs).toEqual({ sides: 'fronts' });
    expect(rowOf(sheet, 'FL FR SiL SiR').length).toBe(5);
    await choose('each its own');
    expect(findAll(sheet, 'tbody th').map((one) => plain(one.textContent ?? ''))).toEqual(
      expect.arrayContaining(['FL FR', 'SiL', 'SiR']),
    );
    await choose('of one model');
    expect(bench.state.document.models.sameAs).toEqual({});
    expect(rowOf(sheet, 'SiL SiR').length).toBe(5);
  });

  it('offer subs only one another', async () => {
    const sheet = await shown(benchOf([pair]));
    await open(sheet);
    const select = find<HTMLSelectElement>(sheet, 'select[data-group="subs"]');
    expect([...select.options].map(({ text }) => plain(text))).toEqual([
      'of one model',
      'each its own',
    ]);
    expect(select.selectedIndex).toBe(1);
  });

  it('wait while something runs', async () => {
    const bench = benchOf([pair]);
    const sheet = await shown(bench);
    await open(sheet);
    const play = { phase: 'playing', progress: 0, secondsLeft: 1, position: 0 } as const;
    const part = { number: 1, of: 1 };
    bench.set({ activity: { kind: 'playing', play, channel: null, part } });
    await settle(sheet);
    for (const select of findAll<HTMLSelectElement>(sheet, 'select')) {
      expect(select.disabled).toBe(true);
    }
    expect(field(sheet, 'Sheet’s −3 dB of FC').disabled).toBe(true);
  });
});
