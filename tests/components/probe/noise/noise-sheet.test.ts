import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../../components/theme/base.css';
import '../../../../components/probe/noise/noise-sheet';
import type { NoiseReading, NoiseRequest, NoiseState } from '../../../../src/noise/noise-state';
import { benchWith } from '../../bench-of';
import { FakeBench } from '../../fake-bench';
import { inventedReadings, layout524 } from '../../fixtures';
import { find, findAll, mount, notNumbers, plain, settle, textOf } from '../../mount';
import { expectQuiet } from '../../quiet';
import { inventedSpectrum } from './invented-spectrum';

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

const request: NoiseRequest = {
  kind: 'noise',
  channel: 'FL',
  lowHz: 20,
  highHz: 20_000,
  gainDb: -30,
  bandsPerOctave: 3,
  averagingSeconds: 15,
};

function noise(changes: Partial<NoiseState> = {}): NoiseState {
  return {
    request,
    seconds: 6,
    secondsLeft: 9,
    complete: false,
    spectrum: inventedSpectrum(3),
    bandLevelDb: -46.24,
    soundLevel: { weighting: 'C', time: 'slow', db: 75.16, calibrated: true },
    reading: null,
    warnings: [],
    ...changes,
  };
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
    expect(bench.asked[0]).toMatchObject({ lowHz: 20, highHz: 400 });
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
    const bench = new NoisyBench('5.2.4', { activity: { kind: 'noise', noise: noise() } });
    const sheet = await mount('ll-noise-sheet', { bench }, 1000);
    const shown = textOf(find(sheet, 'll-noise-readout'));
    for (const words of ['75.2 dB(C)', '−46.2 dBFS', 'Left of the average 9 s']) {
      expect(shown).toContain(words);
    }
    const size = getComputedStyle(find(sheet, '.huge')).fontSize;
    expect(parseFloat(size)).toBeGreaterThan(40);
  });

  it('follows another speaker at once', async () => {
    const bench = new NoisyBench('5.2.4', { activity: { kind: 'noise', noise: noise() } });
    const sheet = await mount('ll-noise-sheet', { bench }, 1000);
    await pick(sheet, 'SiL');
    expect(bench.changed).toEqual([{ ...request, channel: 'SiL' }]);
  });

  it('stops, and keeps its reading once there is one', async () => {
    const bench = new NoisyBench('5.2.4', { activity: { kind: 'noise', noise: noise() } });
    const sheet = await mount('ll-noise-sheet', { bench }, 1000);
    expect(button(sheet, 'Keep this reading').disabled).toBe(true);
    bench.set({ activity: { kind: 'noise', noise: noise({ reading: kept() }) } });
    await settle(sheet);
    await userEvent.click(button(sheet, 'Keep this reading'));
    await userEvent.click(button(sheet, 'Stop the noise'));
    expect(bench.calls).toEqual(['keepNoise', 'stop']);
  });

  it('says what disturbs it, each once and only the newest', async () => {
    const warnings = ['One.', 'Two.', 'Two.', 'Three.', 'Four.', 'Five.'];
    const bench = new NoisyBench('5.2.4', {
      activity: { kind: 'noise', noise: noise({ warnings }) },
    });
    const sheet = await mount('ll-noise-sheet', { bench }, 366);
    const shown = findAll(find(sheet, 'll-noise-readout'), 'li').map((one) => one.textContent);
    expect(shown).toEqual(['Two.', 'Three.', 'Four.', 'Five.']);
  });

  it('cautions when more was taken than ears should take', async () => {
    const bench = new NoisyBench('5.2.4', { activity: { kind: 'noise', noise: noise() } });
    const sheet = await mount('ll-noise-sheet', { bench });
    expect(textOf(sheet)).not.toContain('leave the room');
    bench.set({ exposure: { dose: 0.7, equivalentDb: 91, seconds: 900 } });
    await settle(sheet);
    expect(textOf(sheet)).toContain('leave the room or wear hearing protection');
  });

  it('shows no number where there is none', async () => {
    const empty = noise({ spectrum: null, bandLevelDb: null, soundLevel: null, seconds: 0 });
    const bench = new NoisyBench('9.4.6', { activity: { kind: 'noise', noise: empty } });
    const sheet = await mount('ll-noise-sheet', { bench }, 366);
    expect(notNumbers(sheet)).toEqual([]);
    expect(sheet.scrollWidth).toBeLessThanOrEqual(366);
  });
});

const responseOf = (change: (db: number) => number) => {
  const response = inventedReadings(layout524).channels[0]?.curves?.response;
  if (!response) throw new RangeError('no response');
  return { ...response, db: response.db.map(change) };
};

function kept(changes: Partial<NoiseReading> = {}): NoiseReading {
  return {
    id: 'kept 1',
    positionId: 'seat-1',
    kind: 'noise',
    channel: 'FL',
    startedAt: '2025-01-01T00:02:00.000Z',
    rig: 'practice',
    simulated: true,
    lowHz: 20,
    highHz: 20_000,
    seconds: 15,
    levelDb: -31.24,
    response: responseOf((db) => db + 0.5),
    rolloff: null,
    notes: [],
    ...changes,
  };
}

describe('kept readings', () => {
  it('are listed, and the newest is drawn against the sweep', async () => {
    const noiseReadings = [kept({ id: 'old', channel: 'FR' }), kept()];
    const bench = benchWith(layout524, inventedReadings(layout524), { noiseReadings });
    const sheet = await mount('ll-noise-sheet', { bench }, 1000);
    const list = find(sheet, 'll-kept-readings');
    expect(textOf(list)).toMatch(/FL noise ?, simulated −31\.2 dB – 15 s Seat 1/);
    expect(textOf(list)).toContain(
      'Differs from the sweep by 0.50 dB on average and 0.50 dB at most',
    );
    expect(findAll(list, '.curve').map((curve) => curve.getAttribute('data-channel'))).toEqual([
      'FL, sweep',
      'FL, noise',
    ]);
  });

  it('are picked and removed', async () => {
    const noiseReadings = [kept({ id: 'old', channel: 'FR', kind: 'listening' }), kept()];
    const bench = benchWith(layout524, inventedReadings(layout524), { noiseReadings });
    const sheet = await mount('ll-noise-sheet', { bench }, 1000);
    const list = find(sheet, 'll-kept-readings');
    find(list, '[aria-label="Show FR, listening"]').click();
    await settle(sheet);
    expect(textOf(list)).toContain('Without arrival');
    expect(find(list, '.curve.lead').getAttribute('data-channel')).toBe('FR, listening');
    button(list, 'Remove FR, listening').click();
    expect(bench.state.document.noiseReadings.map(({ id }) => id)).toEqual(['kept 1']);
  });

  it('say when sweep and noise were taken at different positions', async () => {
    const noiseReadings = [kept({ positionId: 'elsewhere' })];
    const bench = benchWith(layout524, inventedReadings(layout524), { noiseReadings });
    const sheet = await mount('ll-noise-sheet', { bench }, 1000);
    expect(textOf(sheet)).toContain('The sweep was taken at another position.');
  });

  it('are not drawn again while noise runs on', async () => {
    const bench = benchWith(layout524, inventedReadings(layout524), { noiseReadings: [kept()] });
    const sheet = await mount('ll-noise-sheet', { bench }, 1000);
    const chart = find<HTMLElementTagNameMap['ll-response-chart']>(sheet, 'll-response-chart');
    const before = chart.traces;
    for (let seconds = 0; seconds < 5; seconds++) {
      bench.set({ activity: { kind: 'noise', noise: noise({ seconds }) } });
      await settle(sheet);
    }
    expect(chart.traces).toBe(before);
  });
});
