import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../../components/theme/base.css';
import '../../../../components/probe/noise/noise-sheet';
import type { NoiseRequest } from '../../../../src/noise/noise-state';
import { FakeBench } from '../../fake-bench';
import { find, findAll, mount, notNumbers, plain, settle, textOf } from '../../mount';
import { expectQuiet } from '../../quiet';
import { inventedNoise, inventedRequest as request, keptReading } from './invented-noise';

expectQuiet();

/** A bench that keeps what was asked of the noise. */
class NoisyBench extends FakeBench {
  readonly asked: NoiseRequest[] = [];
  readonly changed: NoiseRequest[] = [];
  override startNoise(request: NoiseRequest): Promise<void> {
    this.asked.push(request);
    return Promise.resolve();
  }
  override changeNoise(request: NoiseRequest): void {
    this.changed.push(request);
  }
}

const button = (root: Element, words: string) => {
  const found = findAll<HTMLButtonElement>(root, 'button').find(
    (one) => plain(one.textContent ?? '') === words,
  );
  if (!found) throw new RangeError(`no button ${words}`);
  return found;
};

async function pick(sheet: Element, value: string): Promise<void> {
  find<HTMLInputElement>(sheet, `input[type=radio][value="${value}"]`).click();
  await settle(sheet as HTMLElement);
}

describe('asking for noise', () => {
  it('begins with the full band on the first speaker at the test level', async () => {
    const bench = new NoisyBench('5.2.4');
    const sheet = await mount('ll-noise-sheet', { bench }, 1000);
    await userEvent.click(button(sheet, 'Play noise on FL'));
    expect(bench.asked).toEqual([request]);
  });

  it('takes speaker, band, resolution, averaging and level; remembers them for the next visit', async () => {
    const bench = new NoisyBench('5.2.4');
    const sheet = await mount('ll-noise-sheet', { bench }, 1000);
    await pick(sheet, 'FC');
    await pick(sheet, 'mains');
    await userEvent.selectOptions(find<HTMLSelectElement>(sheet, 'select'), '1/12 octave');
    const fields = findAll(sheet, 'll-number').map((one) => find<HTMLInputElement>(one, 'input'));
    for (const [index, text] of [
      [0, '30'],
      [1, '-24,5'],
    ] as const) {
      const field = fields[index];
      if (!field) throw new RangeError('no field');
      await userEvent.fill(field, text);
      await userEvent.keyboard('{Enter}');
    }
    await userEvent.click(button(sheet, 'Play noise on FC'));
    sheet.remove();
    const again = await mount('ll-noise-sheet', { bench }, 1000);
    await userEvent.click(button(again, 'Play noise on FC'));
    const wanted = {
      ...request,
      channel: 'FC',
      lowHz: 500,
      highHz: 2000,
      bandsPerOctave: 12,
      averagingSeconds: 30,
      gainDb: -24.5,
    };
    expect(bench.asked).toEqual([wanted, wanted]);
  });

  it('takes the band of subs for a sub, and that of mains back again', async () => {
    const bench = new NoisyBench('5.2.4');
    const sheet = await mount('ll-noise-sheet', { bench }, 1000);
    await pick(sheet, 'mains');
    await pick(sheet, 'Sub 1');
    await userEvent.click(button(sheet, 'Play noise on Sub 1'));
    await pick(sheet, 'FR');
    await userEvent.click(button(sheet, 'Play noise on FR'));
    expect(bench.asked.map(({ lowHz, highHz }) => [lowHz, highHz])).toEqual([
      [30, 80],
      [500, 2000],
    ]);
  });

  it('takes free limits, and says which make no sense', async () => {
    const bench = new NoisyBench('5.2.4');
    const sheet = await mount('ll-noise-sheet', { bench }, 1000);
    await pick(sheet, 'free');
    const [low, high] = findAll(find(sheet, 'll-band-choice'), 'll-number').map((one) =>
      find<HTMLInputElement>(one, 'input'),
    );
    if (!low || !high) throw new RangeError('no limits');
    await userEvent.fill(high, '400');
    await userEvent.keyboard('{Enter}');
    await settle(sheet);
    await userEvent.fill(low, '500');
    await userEvent.keyboard('{Enter}');
    await settle(sheet);
    expect(textOf(sheet)).toContain('From lies between 10 and 317 Hz');
    await userEvent.click(button(sheet, 'Play noise on FL'));
    expect(bench.asked[0]).toMatchObject({ lowHz: 10, highHz: 400 });
  });

  it('is never louder than the cap', async () => {
    const bench = new NoisyBench('5.2.4');
    const { document } = bench.state;
    bench.set({ document: { ...document, live: { ...document.live, gainDb: -3, capDb: -12 } } });
    const sheet = await mount('ll-noise-sheet', { bench }, 1000);
    await userEvent.click(button(sheet, 'Play noise on FL'));
    expect(bench.asked[0]?.gainDb).toBe(-12);
  });

  it('can listen only, and says what that cannot give', async () => {
    const bench = new NoisyBench('5.2.4');
    const sheet = await mount('ll-noise-sheet', { bench }, 1000);
    await pick(sheet, 'listening');
    expect(textOf(sheet)).toContain('without arrival');
    await userEvent.click(button(sheet, 'Listen to FL'));
    expect(bench.asked[0]?.kind).toBe('listening');
  });

  it('is not offered for a recording', async () => {
    const bench = new NoisyBench('5.2.4');
    bench.setRig('recording');
    const sheet = await mount('ll-noise-sheet', { bench }, 366);
    expect(findAll(sheet, 'll-noise-buttons')).toEqual([]);
  });
});

describe('running noise', () => {
  it('shows sound level, band level and time left, in large numbers', async () => {
    const bench = new NoisyBench('5.2.4', { activity: { kind: 'noise', noise: inventedNoise() } });
    const sheet = await mount('ll-noise-sheet', { bench }, 1000);
    const shown = textOf(find(sheet, 'll-noise-readout'));
    for (const words of ['75.2 dB(C)', '−46.2 dBFS', 'Left of the average 9 s']) {
      expect(shown).toContain(words);
    }
    const size = getComputedStyle(find(sheet, '.huge')).fontSize;
    expect(parseFloat(size)).toBeGreaterThan(40);
  });

  it('follows another speaker at once', async () => {
    const bench = new NoisyBench('5.2.4', { activity: { kind: 'noise', noise: inventedNoise() } });
    const sheet = await mount('ll-noise-sheet', { bench }, 1000);
    await pick(sheet, 'SiL');
    expect(bench.changed).toEqual([{ ...request, channel: 'SiL' }]);
  });

  it('follows the speaker that is picked on the plan', async () => {
    const bench = new NoisyBench('5.2.4', { activity: { kind: 'noise', noise: inventedNoise() } });
    const sheet = await mount('ll-noise-sheet', { bench, selected: 'FC' }, 1000);
    expect(bench.changed).toEqual([]);
    sheet.selected = 'SiR';
    await settle(sheet);
    expect(bench.changed).toEqual([{ ...request, channel: 'SiR' }]);
    bench.set({ activity: { kind: 'idle' } });
    sheet.selected = 'TpFL';
    await settle(sheet);
    await userEvent.click(button(sheet, 'Play noise on TpFL'));
    expect(bench.asked.map(({ channel }) => channel)).toEqual(['TpFL']);
  });

  it('picks its speaker on the plan', async () => {
    const bench = new NoisyBench('5.2.4');
    const sheet = await mount('ll-noise-sheet', { bench }, 1000);
    const picked: unknown[] = [];
    document.body.addEventListener('ll-select', (event) => picked.push(event.detail), {
      once: true,
    });
    await pick(sheet, 'TpBR');
    expect(picked).toEqual(['TpBR']);
  });

  it('stops, and keeps its reading once there is one', async () => {
    const bench = new NoisyBench('5.2.4', { activity: { kind: 'noise', noise: inventedNoise() } });
    const sheet = await mount('ll-noise-sheet', { bench }, 1000);
    expect(button(sheet, 'Keep this reading').disabled).toBe(true);
    bench.set({ activity: { kind: 'noise', noise: inventedNoise({ reading: keptReading() }) } });
    await settle(sheet);
    await userEvent.click(button(sheet, 'Keep this reading'));
    await userEvent.click(button(sheet, 'Stop the noise'));
    expect(bench.calls).toEqual(['keepNoise', 'stop']);
  });

  it('says what disturbs it, each once and only the newest', async () => {
    const warnings = ['One.', 'Two.', 'Two.', 'Three.', 'Four.', 'Five.'];
    const bench = new NoisyBench('5.2.4', {
      activity: { kind: 'noise', noise: inventedNoise({ warnings }) },
    });
    const sheet = await mount('ll-noise-sheet', { bench }, 366);
    const shown = findAll(find(sheet, 'll-noise-readout'), 'li').map((one) => one.textContent);
    expect(shown).toEqual(['Two.', 'Three.', 'Four.', 'Five.']);
  });

  it('cautions when more was taken than ears should take', async () => {
    const bench = new NoisyBench('5.2.4', { activity: { kind: 'noise', noise: inventedNoise() } });
    const sheet = await mount('ll-noise-sheet', { bench });
    expect(textOf(sheet)).not.toContain('leave the room');
    bench.set({ exposure: { dose: 0.7, equivalentDb: 91, seconds: 900 } });
    await settle(sheet);
    expect(textOf(sheet)).toContain('leave the room or wear hearing protection');
  });

  it('shows no number where there is none', async () => {
    const empty = inventedNoise({
      spectrum: null,
      bandLevelDb: null,
      soundLevel: null,
      seconds: 0,
    });
    const bench = new NoisyBench('9.4.6', { activity: { kind: 'noise', noise: empty } });
    const sheet = await mount('ll-noise-sheet', { bench }, 366);
    expect(notNumbers(sheet)).toEqual([]);
    expect(sheet.scrollWidth).toBeLessThanOrEqual(366);
  });
});
