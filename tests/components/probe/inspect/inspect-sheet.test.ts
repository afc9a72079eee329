import { describe, expect, it, vi } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../../components/theme/base.css';
import '../../../../components/probe/inspect/inspect-sheet';
import type { InspectRequest } from '../../../../src/inspect/inspection';
import type { TakeRecord } from '../../../../src/session/document';
import { scheduleTake } from '../../../../src/take/schedule-take';
import { trouble } from '../../../../src/trouble';
import { benchWith } from '../../bench-of';
import { FakeBench } from '../../fake-bench';
import { inventedReadings, layout524 } from '../../fixtures';
import {
  find,
  findAll,
  mount,
  notNumbers,
  overlappingTexts,
  plain,
  settle,
  textOf,
} from '../../mount';
import { expectQuiet } from '../../quiet';
import { sampleDistortion } from '../../charts/sample-distortion';
import { inventedAnswer } from './invented-sound';

expectQuiet();

function inspected(): { bench: FakeBench; asked: InspectRequest[] } {
  const invented = inventedReadings(layout524);
  const readings = {
    ...invented,
    channels: invented.channels.map((one) => ({ ...one, distortion: sampleDistortion() })),
  };
  const bench = benchWith(layout524, readings);
  const { document } = bench.state;
  const take = (gainDb: number): TakeRecord => ({
    id: `take at ${gainDb}`,
    position: document.position,
    startedAt: '2030-01-02T03:04:05.000Z',
    rig: 'practice',
    simulated: true,
    schedule: scheduleTake(layout524),
    captureId: 'capture',
    loopbackId: null,
    captureRate: 48_000,
    notes: [],
    readings,
    gainDb,
  });
  bench.set({ document: { ...document, takes: [take(-6), take(0)] } });
  const asked: InspectRequest[] = [];
  bench.answer = (request) => {
    asked.push(request);
    return Promise.resolve(inventedAnswer(request));
  };
  return { bench, asked };
}

async function show(width = 1060) {
  const { bench, asked } = inspected();
  const sheet = await mount('ll-inspect-sheet', { bench }, width);
  await settle(sheet);
  return { bench, asked, sheet };
}

async function pick(sheet: HTMLElement, value: string): Promise<void> {
  find<HTMLInputElement>(sheet, `input[type=radio][value="${value}"]`).click();
  await settle(sheet);
  await settle(sheet);
}

async function speak(sheet: HTMLElement, label: string): Promise<void> {
  const row = findAll(sheet, '.speakers label').find((one) => plain(one.textContent) === label);
  if (!row) throw new RangeError(`no speaker ${label}`);
  row.click();
  await settle(sheet);
  await settle(sheet);
}

const names = (sheet: Element): string[] =>
  findAll(sheet, '.names > span').map((one) => plain(one.textContent));

describe('the Inspect sheet', () => {
  it('says that there is nothing to look at before a take', async () => {
    const sheet = await mount('ll-inspect-sheet', { bench: new FakeBench('5.2.4') });
    expect(textOf(sheet)).toContain('run a take first');
  });

  it('begins with the response of the first speaker of the newest take', async () => {
    const { sheet, asked } = await show();
    expect(asked).toEqual([
      {
        kind: 'responses',
        sources: [{ takeId: 'take at 0', channel: 'FL' }],
        smoothing: '1/12',
        window: { kind: 'whole' },
      },
    ]);
    expect(names(sheet)).toEqual(['FL']);
    expect(notNumbers(sheet)).toEqual([]);
  });

  it('leaves out what the noise hides, in the drawing and in the table', async () => {
    const { sheet } = await show();
    find<HTMLElement>(sheet, 'summary').click();
    await settle(sheet);
    const rows = findAll(sheet, 'tbody tr').map((row) => textOf(row));
    expect(rows[0]).toBe('20.0 –');
    // By hand: 3 log2(1.016) dB.
    expect(rows.find((row) => row.startsWith('1016'))).toMatch(/ 0\.1$/);
  });

  it('averages by power and takes the difference of two speakers', async () => {
    const { sheet } = await show();
    await speak(sheet, 'FR');
    expect(names(sheet)).toEqual(['FL', 'FR']);
    await pick(sheet, 'difference');
    expect(names(sheet)).toEqual(['FR less FL']);
    const plane = find(sheet, '.cursor');
    // The second speaker of the invented answer is 2 dB louder everywhere.
    expect(plane.getAttribute('aria-valuetext')).toMatch(/FR less FL 2\.0.dB$/);
    await pick(sheet, 'average');
    // By hand: 10 log((1 + 10^0.2)/2) = 1.11 dB over the first.
    const [average, first] = [/average of 2 (\S+).dB/, /FL (\S+).dB/].map((pattern) =>
      Number(
        pattern
          .exec(find(sheet, '.cursor').getAttribute('aria-valuetext') ?? '')?.[1]
          ?.replace('\u2212', '-'),
      ),
    );
    expect((average ?? 0) - (first ?? 0)).toBeCloseTo(1.1, 6);
  });

  it('levels curves at their middle', async () => {
    const { sheet } = await show();
    await speak(sheet, 'FR');
    const check = findAll(sheet, 'll-check').find((one) => textOf(one).includes('Level them'));
    find<HTMLInputElement>(check ?? sheet, 'input').click();
    await settle(sheet);
    const said = find(sheet, '.cursor').getAttribute('aria-valuetext') ?? '';
    const [, left, right] = /FL (\S+).dB, FR (\S+).dB/.exec(said) ?? [];
    expect(left).toBe(right);
  });

  it('asks anew for another smoothing and another part of the sound', async () => {
    const { sheet, asked } = await show();
    const [smoothing, part] = findAll<HTMLSelectElement>(sheet, 'select');
    if (!smoothing || !part) throw new RangeError('no choices');
    await userEvent.selectOptions(smoothing, 'variable');
    await userEvent.selectOptions(part, 'gate 5');
    await settle(sheet);
    expect(asked.at(-1)).toMatchObject({
      smoothing: 'variable',
      window: { kind: 'gate', milliseconds: 5 },
    });
    expect(textOf(sheet)).toContain('tells nothing below 200 Hz');
  });

  it('draws a target at the height of the curve, and what the curve has over it', async () => {
    const { sheet } = await show();
    find<HTMLInputElement>(find(sheet, 'll-target-wish'), 'input').click();
    await settle(sheet);
    expect(names(sheet)).toEqual(['FL', 'target']);
    const over = findAll(sheet, 'll-check').find((one) => textOf(one).includes('over it'));
    find<HTMLInputElement>(over ?? sheet, 'input').click();
    await settle(sheet);
    expect(names(sheet)).toEqual(['FL']);
  });

  it('says what is wrong with a target file, and keeps the target', async () => {
    const { sheet } = await show();
    find<HTMLInputElement>(find(sheet, 'll-target-wish'), 'input').click();
    await settle(sheet);
    const drop = find(sheet, 'll-file-drop');
    const file = new File(['no numbers here'], 'shopping.txt');
    drop.dispatchEvent(new CustomEvent('ll-file', { detail: file }));
    await vi.waitFor(() => expect(textOf(sheet)).toContain('Nothing was changed.'));
  });

  for (const [view, words] of [
    ['phase', 'Group delay after the arrival'],
    ['time', 'Energy over time'],
    ['decay', 'In the middle, 500 Hz and 1 kHz together, 60 dB are lost in 0.35 s'],
    ['bass', 'Two modes beat here.'],
    ['distortion', 'How low it can be asked to play'],
  ] as const) {
    it(`shows ${view} without a number that is none or texts on each other`, async () => {
      for (const width of [358, 700, 1060]) {
        const { sheet } = await show(width);
        await pick(sheet, view);
        expect(textOf(sheet)).toContain(words);
        expect(notNumbers(sheet)).toEqual([]);
        expect(overlappingTexts(sheet)).toEqual([]);
        sheet.remove();
      }
    });
  }

  it('tells the picture of the bass in numbers', async () => {
    const { sheet } = await show();
    await pick(sheet, 'bass');
    const table = find(find(sheet, 'll-level-picture'), 'll-number-table');
    find<HTMLElement>(table, 'summary').click();
    await settle(sheet);
    expect(findAll(table, 'thead th').map((one) => textOf(one))).toEqual([
      'Hz',
      '0 ms, dB',
      '100 ms, dB',
    ]);
    // The invented picture; nothing is drawn at −42 dB and below.
    expect(findAll(table, 'tbody tr').map((row) => textOf(row))).toEqual([
      '20.0 \u22126.0 \u221230.0',
      '40.0 0.0 \u221212.0',
      '80.0 \u221220.0 < \u221242',
    ]);
  });

  it('compares the levels a speaker was driven at', async () => {
    const { sheet } = await show();
    await pick(sheet, 'distortion');
    expect(names(sheet)).toEqual(['at 0 dB']);
    expect(textOf(sheet)).not.toContain('Compression cannot be told from one level');
  });

  it('saves the curves under a name that says what they are', async () => {
    const { sheet } = await show();
    const saved: string[] = [];
    const click = vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(function (
      this: HTMLAnchorElement,
    ) {
      saved.push(this.download);
    });
    for (const button of findAll<HTMLButtonElement>(sheet, 'button.ghost')) button.click();
    await vi.waitFor(() => expect(saved).toHaveLength(2));
    click.mockRestore();
    expect(saved[0]).toMatch(/^5\.2\.4 FL .* response\.csv$/);
    expect(saved[1]).toMatch(/^5\.2\.4 FL .* impulse response zero delay at sample 1\.wav$/);
  });

  it('says why when nothing can be computed', async () => {
    const { bench } = inspected();
    bench.answer = () => Promise.resolve(trouble('storage', 'The recording is gone.'));
    const sheet = await mount('ll-inspect-sheet', { bench });
    await settle(sheet);
    expect(find(sheet, '[role=alert]').textContent).toBe('The recording is gone.');
  });

  it('looks no more once it is left', async () => {
    const { bench, sheet } = await show();
    sheet.remove();
    expect(bench.calls).toContain('inspect no more');
  });
});
