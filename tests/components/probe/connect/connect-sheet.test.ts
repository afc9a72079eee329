import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../../components/theme/base.css';
import '../../../../components/probe/connect/connect-sheet';
import type { Devices } from '../../../../src/session/bench';
import type { SessionDocument } from '../../../../src/session/document';
import { FakeBench } from '../../fake-bench';
import { find, findAll, mount, plain, settle, textOf } from '../../mount';
import { expectQuiet } from '../../quiet';
import { sampleTake } from '../../sample-session';

expectQuiet();

const devices: Devices = {
  microphones: [
    { id: 'm1', name: 'Invented microphone' },
    { id: 'm2', name: 'Built-in' },
  ],
  outputs: [{ id: 'o1', name: 'Invented interface' }],
  change: null,
};

function liveBench(live: Partial<SessionDocument['live']> = {}, layout = '5.1'): FakeBench {
  const bench = new FakeBench(layout, { devices });
  const { document } = bench.state;
  bench.set({ document: { ...document, rig: 'live', live: { ...document.live, ...live } } });
  return bench;
}

const selects = (sheet: Element) =>
  findAll<HTMLSelectElement>(find(sheet, 'll-device-pickers'), 'select');
const shown = (select: HTMLSelectElement | undefined) =>
  plain(select?.selectedOptions[0]?.textContent ?? '');

describe('how the speakers are reached', () => {
  it('stands clear of what is said of it, at any width', async () => {
    for (const width of [358, 788, 1060]) {
      for (const rig of ['practice', 'recording'] as const) {
        const bench = new FakeBench('5.1');
        bench.set({ document: { ...bench.state.document, rig } });
        const sheet = await mount('ll-connect-sheet', { bench }, width);
        const choice = find(sheet, 'll-rig-choice').getBoundingClientRect();
        const said = find(sheet, rig === 'practice' ? 'll-practice-rig' : 'p');
        expect(said.getBoundingClientRect().top - choice.bottom).toBeGreaterThanOrEqual(8);
        sheet.remove();
      }
    }
  });
});

describe('choosing devices', () => {
  it('looks for them once, without asking for the microphone', async () => {
    const bench = liveBench();
    await mount('ll-connect-sheet', { bench });
    expect(bench.calls).toEqual(['lookAtDevices']);
  });

  it('keeps the chosen output and microphone with their names', async () => {
    const bench = liveBench();
    const sheet = await mount('ll-connect-sheet', { bench });
    const [output, microphone] = selects(sheet);
    if (!output || !microphone) throw new RangeError('no pickers');
    await userEvent.selectOptions(output, 'Invented interface');
    await userEvent.selectOptions(microphone, 'Built-in');
    expect(bench.state.document.live.output).toEqual({ id: 'o1', name: 'Invented interface' });
    expect(bench.state.document.live.microphone).toEqual({ id: 'm2', name: 'Built-in' });
    await userEvent.selectOptions(output, 'as the system chooses');
    expect(bench.state.document.live.output).toBeNull();
  });

  it('finds a device again by its name when its id has changed', async () => {
    const bench = liveBench({ microphone: { id: 'old', name: 'Built-in' } });
    const sheet = await mount('ll-connect-sheet', { bench });
    expect(shown(selects(sheet)[1])).toBe('Built-in');
    expect(textOf(sheet)).not.toContain('Not plugged in');
  });

  it('says that a chosen device is not plugged in, and keeps it', async () => {
    const bench = liveBench({ output: { id: 'gone', name: 'Other interface' } });
    const sheet = await mount('ll-connect-sheet', { bench });
    expect(shown(selects(sheet)[0])).toBe('Other interface, not plugged in now');
    expect(textOf(sheet)).toContain('Not plugged in now. Plug it in, or choose another.');
    expect(bench.state.document.live.output?.id).toBe('gone');
  });

  it('offers to allow the microphone while names are hidden, and blames no device', async () => {
    const bench = liveBench({ microphone: { id: 'old', name: 'Invented microphone' } });
    bench.set({ devices: { microphones: [{ id: 'x', name: '' }], outputs: [], change: null } });
    const sheet = await mount('ll-connect-sheet', { bench });
    expect(textOf(sheet)).not.toContain('not plugged in');
    const [allow] = findAll(find(sheet, 'll-device-pickers'), 'button');
    expect(plain(allow?.textContent ?? '')).toBe('Allow the microphone to see names');
    allow?.click();
    expect(bench.calls).toContain('lookAtDevices, asking');
  });

  it('says what came or went', async () => {
    const bench = liveBench();
    const sheet = await mount('ll-connect-sheet', { bench });
    bench.set({ devices: { ...devices, change: 'Invented interface was unplugged.' } });
    await settle(sheet);
    expect(textOf(find(sheet, 'll-device-pickers'))).toContain('Invented interface was unplugged.');
  });

  it('can be worked by the keyboard, and by no one while a take runs', async () => {
    const bench = liveBench();
    const sheet = await mount('ll-connect-sheet', { bench });
    selects(sheet)[1]?.focus();
    await userEvent.keyboard('{ArrowDown}');
    expect(bench.state.document.live.microphone?.name).toBe('Invented microphone');
    bench.set({ activity: { kind: 'reading', progress: 0, secondsLeft: null, channels: [] } });
    await settle(sheet);
    expect(findAll<HTMLSelectElement>(sheet, 'select').every(({ disabled }) => disabled)).toBe(
      true,
    );
  });
});

describe('the microphone’s input', () => {
  it('is noted, and the loopback with it', async () => {
    const bench = liveBench();
    const sheet = await mount('ll-connect-sheet', { bench });
    const input = find(sheet, 'll-input-choice');
    const check = find<HTMLInputElement>(input, 'input[type=checkbox]');
    await userEvent.click(check);
    await settle(sheet);
    expect(bench.state.document.live.loopback).toBe(true);
    expect(textOf(input)).toContain('Say which input the microphone sits on');
    findAll<HTMLInputElement>(input, 'input[type=radio]')[2]?.click();
    await settle(sheet);
    expect(bench.state.document.live.microphoneInput).toBe(1);
    expect(textOf(input)).not.toContain('Say which input');
    findAll<HTMLInputElement>(input, 'input[type=radio]')[0]?.click();
    expect(bench.state.document.live.microphoneInput).toBeNull();
  });
});

describe('what the browser gave', () => {
  it('is told, with what it keeps to itself and the notes of the newest live take', async () => {
    const bench = liveBench();
    bench.set({
      abilities: {
        kind: 'live',
        name: 'invented interface',
        simulated: false,
        outputs: 6,
        inputs: 2,
        sampleRate: 44_100,
        unknown: ['latency'],
      },
      document: {
        ...bench.state.document,
        takes: [{ ...sampleTake('5.1'), rig: 'live', notes: ['microphone: Invented'] }],
      },
    });
    const sheet = await mount('ll-connect-sheet', { bench });
    const facts = textOf(find(sheet, 'll-given-facts'));
    expect(facts).toContain('Channels out 6');
    expect(facts).toContain('Sample rate 44.1 kHz');
    expect(facts).toContain('Not told latency');
    expect(facts).toContain('microphone: Invented');
  });

  it('is not told before a microphone was opened', async () => {
    const sheet = await mount('ll-connect-sheet', { bench: liveBench() });
    expect(textOf(find(sheet, 'll-given-facts'))).toContain('Told once the microphone was opened');
  });
});

describe('the Connect sheet', () => {
  it('asks for nothing in the practice room and points to the steps of a recording', async () => {
    const bench = new FakeBench('5.1');
    const sheet = await mount('ll-connect-sheet', { bench });
    expect(textOf(sheet)).toContain('Needs nothing.');
    bench.setRig('recording');
    await settle(sheet);
    expect(textOf(sheet)).toContain('Nothing is connected to this computer');
    expect(find<HTMLAnchorElement>(sheet, 'a').hash).toBe('#probe/take');
  });

  it('mistypes something in the practice room without telling what, and takes it back', async () => {
    const bench = new FakeBench('5.1');
    const sheet = await mount('ll-connect-sheet', { bench });
    const flip = (on: boolean) =>
      find(sheet, 'll-check[label="Mistype something"]').dispatchEvent(
        new CustomEvent('ll-check', { detail: on }),
      );
    const before = textOf(sheet);
    flip(true);
    await settle(sheet);
    expect(bench.calls).toEqual(['Mistype something']);
    expect(bench.state.document.practice.slips).toHaveLength(1);
    expect(textOf(sheet)).toBe(before);
    flip(false);
    expect(bench.state.document.practice.slips).toEqual([]);
  });

  it('fits a phone with 19 speakers and endless names', async () => {
    const name = 'An invented interface whose name never ends, on and on, and on again';
    const bench = liveBench({ output: { id: 'gone', name } }, '9.4.6');
    const sheet = await mount('ll-connect-sheet', { bench }, 366);
    expect(sheet.scrollWidth).toBeLessThanOrEqual(366);
  });
});
