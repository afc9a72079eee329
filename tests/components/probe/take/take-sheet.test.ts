import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../../components/theme/base.css';
import {
  nextSeatName,
  positionsOf,
  renamePosition,
} from '../../../../components/probe/take/positions';
import { settingsSentence } from '../../../../components/probe/take/take-settings';
import '../../../../components/probe/take/take-sheet';
import type { TakeRecord } from '../../../../src/session/document';
import { benchWith } from '../../bench-of';
import { FakeBench } from '../../fake-bench';
import { inventedReadings, layout524 } from '../../fixtures';
import { find, findAll, mount, plain, settle, textOf } from '../../mount';
import { expectQuiet } from '../../quiet';
import { sampleTake } from '../../sample-session';

expectQuiet();

const seat2 = { id: 'seat-2', name: 'Seat 2', kind: 'seat' } as const;

function takes(): TakeRecord[] {
  const one = sampleTake('5.2.4');
  return [one, { ...one, id: 'two' }, { ...one, id: 'three', position: seat2 }];
}

function fieldNamed(root: Element, label: string): HTMLInputElement {
  const field = findAll(root, 'll-number').find((one) => one.getAttribute('label') === label);
  if (!field) throw new RangeError(`no field ${label}`);
  return find<HTMLInputElement>(field, 'input');
}

describe('how a take is made', () => {
  it('is a sentence', async () => {
    const { take } = new FakeBench('5.1').state.document;
    expect(plain(settingsSentence(take))).toBe('Sweeps of 2.7 s, once each.');
    const long = { ...take, sweepSeconds: 10, averages: 4, overlap: true, pauseSeconds: 1.5 };
    expect(plain(settingsSentence(long))).toBe(
      'Sweeps of 10.0 s, 4 times each, overlapping, pauses of 1.5 s.',
    );
  });

  it('is set in its fields, whole numbers where only those mean something', async () => {
    const bench = new FakeBench('5.1');
    const sheet = await mount('ll-take-sheet', { bench });
    await userEvent.click(find(sheet, 'summary'));
    for (const [label, text] of [
      ['Sweep of each speaker', '5,5'],
      ['Sweeps averaged', '3.4'],
      ['Pause between speakers', '2'],
      ['Repeats without being asked', '0'],
    ] as const) {
      await userEvent.fill(fieldNamed(sheet, label), text);
      await userEvent.keyboard('{Enter}');
    }
    const overlap = find(sheet, 'll-check[label="Let sweeps overlap"]');
    await userEvent.click(find(overlap, 'input'));
    expect(bench.state.document.take).toEqual({
      sweepSeconds: 5.5,
      averages: 3,
      pauseSeconds: 2,
      overlap: true,
      repeats: 0,
    });
  });

  it('stays as it was when nonsense is typed, and says so', async () => {
    const bench = new FakeBench('5.1');
    const before = bench.state.document;
    const sheet = await mount('ll-take-sheet', { bench });
    await userEvent.click(find(sheet, 'summary'));
    await userEvent.fill(fieldNamed(sheet, 'Sweep of each speaker'), '90');
    await userEvent.keyboard('{Enter}');
    await settle(sheet);
    expect(textOf(sheet)).toContain('Sweep of each speaker lies between 0.5 and 30 s');
    expect(bench.state.document).toBe(before);
  });

  it('changes how long the take says it lasts', async () => {
    const bench = new FakeBench('5.1');
    const sheet = await mount('ll-take-sheet', { bench });
    const seconds = () => /The take lasts (.*?);/.exec(textOf(sheet))?.[1];
    const before = seconds();
    const { document } = bench.state;
    bench.set({ document: { ...document, take: { ...document.take, averages: 8 } } });
    await settle(sheet);
    expect(seconds()).not.toBe(before);
  });
});

describe('positions', () => {
  const document = { ...new FakeBench('5.2.4').state.document, takes: takes() };

  it('are those with takes and the one in hand', () => {
    expect(positionsOf(document).map((one) => [one.position.name, one.takes])).toEqual([
      ['Seat 1', 2],
      ['Seat 2', 1],
    ]);
    expect(nextSeatName(document)).toBe('Seat 3');
  });

  it('carry a new name wherever they stand', () => {
    const renamed = renamePosition(document, 'seat-1', 'Sofa, middle');
    expect(positionsOf(renamed).map(({ position }) => position.name)).toEqual([
      'Sofa, middle',
      'Seat 2',
    ]);
    expect(renamed.position.name).toBe('Sofa, middle');
    expect(nextSeatName(renamed)).toBe('Seat 1');
  });

  it('are added, close ones too, and gone back to', async () => {
    const bench = benchWith(layout524, inventedReadings(layout524), { takes: takes() });
    const sheet = await mount('ll-take-sheet', { bench, selected: 'SiL' }, 366);
    const picker = find(sheet, 'll-position-picker');
    const [seat, close] = findAll(picker, 'button');
    seat?.click();
    close?.click();
    await userEvent.selectOptions(find<HTMLSelectElement>(picker, 'select'), 'Seat 2, 1 take');
    expect(bench.calls).toEqual([
      'setPosition Seat 3',
      'setPosition Close to SiL',
      'setPosition seat-2',
    ]);
    expect(sheet.scrollWidth).toBeLessThanOrEqual(366);
  });

  it('are offered as the plan names its seats, until the microphone has stood there', async () => {
    const seats = ['Seat 2', 'Sofa, left'].map((name, n) => ({
      name,
      rightMetres: 0.8 * (n + 1),
      backMetres: 0,
    }));
    const system = { ...document.system, seats };
    const bench = benchWith(layout524, inventedReadings(layout524), { takes: takes(), system });
    const sheet = await mount('ll-take-sheet', { bench }, 366);
    const picker = find(sheet, 'll-position-picker');
    const offered = (): string[] => findAll(picker, 'optgroup option').map(textOf);
    expect(offered()).toEqual(['Sofa, left']);
    const asked: unknown[] = [];
    bench.setPosition = (position) => void asked.push(position);
    await userEvent.selectOptions(find<HTMLSelectElement>(picker, 'select'), 'Sofa, left');
    expect(asked).toEqual([{ name: 'Sofa, left', kind: 'seat' }]);
    const sofa = { id: 'sofa', name: 'Sofa, left', kind: 'seat' } as const;
    bench.change('Move', (before) => ({ ...before, position: sofa }));
    await expect.poll(offered).toEqual([]);
    expect(find<HTMLSelectElement>(picker, 'select').value).toBe('sofa');
    expect(sheet.scrollWidth).toBeLessThanOrEqual(366);
  });

  it('hold the cone alone, and then its port with the widths both are summed by', async () => {
    const close = { channel: 'FL', coneOnly: true } as const;
    const cone = { id: 'cone', name: 'Close to FL', kind: 'close', close } as const;
    const bench = benchWith(layout524, inventedReadings(layout524), { position: cone });
    const sheet = await mount('ll-take-sheet', { bench }, 366);
    const picker = find(sheet, 'll-position-picker');
    findAll(picker, 'button')
      .find(({ textContent }) => textContent.trim() === 'Port of FL')
      ?.click();
    expect(bench.calls).toEqual(['setPosition Port of FL']);
    const port = { coneMetres: 0.13, portMetres: 0.05 };
    const there = { ...cone, id: 'port', close: { ...close, coneOnly: false, port } };
    bench.change('Move', (before) => ({ ...before, position: there }));
    await expect.poll(() => findAll(picker, 'll-number').length).toBe(2);
    const width = find<HTMLInputElement>(find(picker, 'll-number'), 'input');
    expect(width.value).toBe('5.0');
    await userEvent.fill(width, '6.4');
    await userEvent.keyboard('{Enter}');
    expect(bench.state.document.position.close?.port?.portMetres).toBeCloseTo(0.064, 12);
    await userEvent.fill(width, '40');
    await userEvent.keyboard('{Enter}');
    expect(bench.state.document.position.close?.port?.portMetres).toBeCloseTo(0.064, 12);
    expect(sheet.scrollWidth).toBeLessThanOrEqual(366);
  });

  it('are named, but not by nothing', async () => {
    const bench = new FakeBench('5.1');
    const sheet = await mount('ll-take-sheet', { bench });
    const input = find<HTMLInputElement>(find(sheet, 'll-position-picker'), 'input');
    await userEvent.fill(input, 'Sofa, left');
    await userEvent.keyboard('{Enter}');
    expect(bench.state.document.position.name).toBe('Sofa, left');
    await userEvent.fill(input, '  ');
    await userEvent.keyboard('{Enter}');
    expect(bench.state.document.position.name).toBe('Sofa, left');
    expect(input.value).toBe('Sofa, left');
  });
});

describe('the takes of a position', () => {
  it('are discarded only when asked for twice, and only those', async () => {
    const bench = benchWith(layout524, inventedReadings(layout524), { takes: takes() });
    const sheet = await mount('ll-take-sheet', { bench });
    const press = async (words: string) => {
      const button = findAll(find(sheet, 'll-position-picker'), 'button').find(
        (one) => plain(one.textContent ?? '') === words,
      );
      if (!button) throw new RangeError(`no button ${words}`);
      button.click();
      await settle(sheet);
    };
    await press('Discard the 2 takes of Seat 1');
    await press('Keep');
    expect(bench.state.document.takes).toHaveLength(3);
    await press('Discard the 2 takes of Seat 1');
    await press('Discard for good');
    expect(bench.state.document.takes.map(({ id }) => id)).toEqual(['three']);
  });
});

describe('damaged sweeps', () => {
  it('may also be those a take never came to', async () => {
    const readings = inventedReadings(layout524);
    const channels = readings.channels.filter(({ channel }) => !channel.startsWith('TpB'));
    const bench = benchWith(layout524, { ...readings, channels });
    bench.set({ toRepeat: ['TpBL', 'TpBR'] });
    const sheet = await mount('ll-take-sheet', { bench });
    const panel = textOf(find(sheet, 'll-repeat-panel'));
    expect(panel).toMatch(/The take ended before it came to TpBL and TpBR ?\./);
    expect(panel).toContain('Repeat TpBL and TpBR');
  });

  it('are named and repeated alone', async () => {
    const readings = inventedReadings(layout524);
    const channels = readings.channels.map((reading) =>
      reading.channel === 'FR' || reading.channel === 'SiL'
        ? {
            ...reading,
            faults: [{ kind: 'bang' as const, sentence: `A bang fell into ${reading.channel}.` }],
          }
        : reading,
    );
    const bench = benchWith(layout524, { ...readings, channels });
    bench.set({ toRepeat: ['FR', 'SiL'] });
    const sheet = await mount('ll-take-sheet', { bench });
    const panel = find(sheet, 'll-repeat-panel');
    expect(textOf(panel)).toContain('A bang fell into FR. A bang fell into SiL.');
    const button = find(panel, 'button');
    expect(plain(button.textContent ?? '')).toBe('Repeat FR and SiL');
    await userEvent.click(button);
    expect(bench.calls).toEqual(['repeatSegments FR, SiL']);
    bench.set({ toRepeat: [] });
    await settle(sheet);
    expect(findAll(sheet, 'll-repeat-panel')).toEqual([]);
  });
});

describe('takes that were joined', () => {
  it('are counted at the position in hand', async () => {
    const bench = benchWith(layout524, inventedReadings(layout524), { takes: takes() });
    const sheet = await mount('ll-take-sheet', { bench });
    expect(textOf(find(sheet, 'll-take-facts'))).toContain('Joined from 2 takes');
  });
});

describe('a take in parts', () => {
  it('says which part plays', async () => {
    const bench = new FakeBench('7.1.4', {
      activity: {
        kind: 'playing',
        channel: 'TpFL',
        part: { number: 2, of: 3 },
        play: { phase: 'playing', progress: 0.4, secondsLeft: 22, position: 1 },
      },
    });
    const sheet = await mount('ll-take-sheet', { bench });
    expect(textOf(sheet)).toContain('40 % of take 2 of 3 played');
  });
});
