import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../components/theme/base.css';
import '../../../components/propose/list/list-sheet';
import { listOf, listTitle } from '../../../components/propose/list/list-words';
import { proposeView } from '../../../components/propose/propose-view';
import { settingsCopy, settingsRows } from '../../../components/propose/settings-rows';
import type { FakeBench } from '../fake-bench';
import { layout524 } from '../fixtures';
import { find, findAll, mount, plain, settle, textOf } from '../mount';
import { sampleSheet } from '../patch/samples';
import { expectQuiet } from '../quiet';
import { benchWithBass } from './proposing-bench';

expectQuiet();

async function listSheet(bench: FakeBench, width = 1060) {
  const view = () => proposeView(bench, bench.state, null);
  const sheet = await mount('ll-list-sheet', { bench, view: view() }, width);
  bench.subscribe(() => Object.assign(sheet, { view: view() }));
  return sheet;
}

const boxOf = (sheet: Element, id: string) =>
  find<HTMLInputElement>(sheet, `label[data-line="${id}"] input`);

describe('the list to type', () => {
  it('follows the outputs of the processor’s sheet, in its units and steps', async () => {
    const processor = await sampleSheet(11);
    const bench = benchWithBass(layout524, 1, { sheet: processor });
    const sheet = await listSheet(bench);
    const rows = findAll(sheet, 'label[data-line]').map((one) => one.dataset['line'] ?? '');
    expect(rows.slice(0, 2)).toEqual(['crossover fronts', 'crossover centre']);
    const distances = rows.filter((id) => id.startsWith('distance'));
    expect(distances).toHaveLength(layout524.channels.length);
    const { unit, step } = processor.distance;
    for (const value of findAll(sheet, 'label[data-line^="distance"] .value')) {
      const [, number = '', said] = /^([\d.]+) (\w+)$/.exec(plain(value.textContent ?? '')) ?? [];
      expect(said).toBe(unit);
      expect(Math.abs(Number(number) / step - Math.round(Number(number) / step))).toBeLessThan(
        1e-6,
      );
    }
    expect(rows).toContain('sub low-pass');
    expect(textOf(sheet)).toContain(processor.name);
  });

  it('is readable from two metres: figures of 27 px or more at 390 px and on a desk', async () => {
    for (const width of [358, 700, 1060]) {
      const sheet = await listSheet(benchWithBass(layout524), width);
      for (const value of findAll(sheet, '.value:not(.unknown)')) {
        expect(parseFloat(getComputedStyle(value).fontSize)).toBeGreaterThanOrEqual(27);
      }
      expect(sheet.scrollWidth).toBeLessThanOrEqual(width);
      sheet.remove();
    }
  });

  it('keeps the row that is next in line with the others', async () => {
    for (const width of [358, 1060]) {
      const sheet = await listSheet(benchWithBass(layout524), width);
      const part = find(sheet, 'section:has(> h3)');
      const lefts = (selector: string) =>
        findAll(part, selector).map((one) => Math.round(one.getBoundingClientRect().left));
      const rights = findAll(part, '.value').map((one) => one.getBoundingClientRect().right);
      expect(new Set(lefts('label input')).size).toBe(1);
      expect(new Set(rights.map(Math.round)).size).toBe(1);
      expect(findAll(part, 'label.next')).toHaveLength(1);
      sheet.remove();
    }
  });

  it('tells what is to be typed of a polarity from what is to be rewired', () => {
    const bench = benchWithBass(layout524);
    const view = proposeView(bench, bench.state, null);
    if (!view) throw new RangeError('nothing is proposed');
    const { proposal } = view;
    const subs = proposal.subs && {
      ...proposal.subs,
      subs: proposal.subs.subs.map((one) => ({ ...one, polarity: 'inverted' as const })),
    };
    const channels = proposal.channels.map((one) =>
      one.channel === 'SiR' ? { ...one, polarity: 'inverted' as const } : one,
    );
    const changed = { ...view, proposal: { ...proposal, subs, channels } };
    const cells = Object.fromEntries(
      settingsRows(changed).map(({ channel, polarity }) => [channel.label, polarity]),
    );
    expect(cells['Sub 1']).toEqual({ text: 'inverted', todo: 'to type' });
    expect(cells['SiR']).toEqual({ text: 'wired inverted', todo: 'swap its wires' });
    expect(cells['FL']).toEqual({ text: 'wired right', todo: null });
    expect(settingsCopy(changed)).toMatch(/^SiR\t.*\twired inverted$/m);
    expect(settingsCopy(changed)).toMatch(/^Sub 1\t.*\tinverted$/m);
  });

  it('ticks lines by keyboard alone, one after the other, and keeps them in the session', async () => {
    const bench = benchWithBass(layout524);
    const sheet = await listSheet(bench);
    const [first, second] = listOf(proposeViewOf(bench), bench.state.document);
    if (!first || !second) throw new RangeError('the list is empty');
    boxOf(sheet, first.id).focus();
    await userEvent.keyboard('{Enter}');
    await settle(sheet);
    expect(bench.state.document.typed).toEqual({ [first.id]: first.text });
    expect(sheet.shadowRoot?.activeElement).toBe(boxOf(sheet, second.id));
    await userEvent.keyboard(' ');
    await settle(sheet);
    expect(bench.state.document.typed).toEqual({
      [first.id]: first.text,
      [second.id]: second.text,
    });
    await userEvent.keyboard(' ');
    await settle(sheet);
    expect(bench.state.document.typed).toEqual({ [first.id]: first.text });
    expect(bench.calls).toEqual([
      'Tick a setting as typed',
      'Tick a setting as typed',
      'Untick a setting',
    ]);
    expect(find(sheet, '[role=progressbar]').getAttribute('aria-valuenow')).toBe('1');
  });

  it('says what was typed before where it has changed since', async () => {
    const bench = benchWithBass(layout524, 1, { typed: { 'crossover fronts': '200 Hz' } });
    const sheet = await listSheet(bench);
    const line = find(sheet, 'label[data-line="crossover fronts"]');
    expect(textOf(line)).toContain('typed before: 200 Hz');
    expect(boxOf(sheet, 'crossover fronts').checked).toBe(false);
    const view = proposeViewOf(bench);
    const { title, lede } = listTitle(listOf(view, bench.state.document), layout524);
    expect(title).toMatch(/^0 of \d+ settings are typed$/);
    expect(lede).toMatch(
      /^Next: crossovers, Fronts, \d+\u202fHz\. 1 changed since they were typed\.$/,
    );
  });

  it('says when everything is typed, and begins again on demand', async () => {
    const bench = benchWithBass(layout524);
    const lines = listOf(proposeViewOf(bench), bench.state.document);
    const typed = Object.fromEntries(lines.flatMap(({ id, text }) => (text ? [[id, text]] : [])));
    bench.change('Test', (document) => ({ ...document, typed }));
    const sheet = await listSheet(bench);
    const view = proposeViewOf(bench);
    expect(listTitle(listOf(view, bench.state.document), layout524).title).toBe(
      'Everything is typed',
    );
    findAll<HTMLButtonElement>(sheet, 'button.ghost')[0]?.click();
    await settle(sheet);
    expect(bench.state.document.typed).toEqual({});
  });

  it('opens each speaker’s line to the readings its numbers rest on', async () => {
    const bench = benchWithBass(layout524);
    const sheet = await listSheet(bench);
    const button = find(sheet, 'tr[data-channel="SiL"] button');
    button.focus();
    await userEvent.keyboard('{Enter}');
    await settle(sheet);
    expect(button.getAttribute('aria-expanded')).toBe('true');
    const why = find<HTMLTableRowElement>(sheet, '#why-SiL');
    expect(why.hidden).toBe(false);
    const channel = bench.state.proposal?.channels.find((one) => one.channel === 'SiL');
    const first = channel?.distanceReasons[0]?.sentence ?? 'none';
    expect(textOf(why)).toContain(plain(first));
  });
});

function proposeViewOf(bench: FakeBench) {
  const view = proposeView(bench, bench.state, null);
  if (!view) throw new RangeError('nothing is proposed');
  return view;
}
