import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../components/theme/base.css';
import type { CopyButton } from '../../../components/charts/copy-button';
import '../../../components/charts/distortion-chart';
import type { DistortionCurves } from '../../../components/charts/distortion-curves';
import {
  find,
  findAll,
  mount,
  notNumbers,
  overlappingTexts,
  plain,
  settle,
  textOf,
} from '../mount';
import { expectQuiet } from '../quiet';
import { sampleDistortion } from './sample-distortion';

expectQuiet();

const none = {
  db: [null, null, null],
  floorDb: [-50, -50, null],
  limitedBy: ['noise', 'decay', 'band'],
} as const;
/** Three frequencies that are read without looking at the drawing. */
const plainCurves: DistortionCurves = {
  kind: 'curves',
  hz: [25, 50, 100],
  fundamentalDb: [-20, -20, -20],
  fundamentalNoiseDb: [-80, -80, -80],
  harmonics: [
    { order: 2, db: [-40, -46, null], floorDb: [-60, -60, -60], limitedBy: [null, null, 'noise'] },
    { order: 3, ...none },
    { order: 4, ...none },
    { order: 5, ...none },
  ],
  total: { db: [-40, -46, null], floorDb: [-60, -60, -40], limitedBy: [null, null, 'noise'] },
  apartFromHz: null,
};

describe('the distortion chart', () => {
  it('draws the total where scale and numbers say, to a tenth of a pixel', async () => {
    const chart = await mount(
      'll-distortion-chart',
      { distortion: plainCurves, channel: 'FL' },
      640,
    );
    // By hand: 586 px from 42 px span ln(500/12), and 306 px from 28 px span 60 dB from −20 dB down.
    expect(find(chart, 'path.total').getAttribute('d')).toBe('M157.3,130L266.2,160.6');
  });

  it('hatches what noise hides, under what it stays below, and says so', async () => {
    const chart = await mount('ll-distortion-chart', {
      distortion: sampleDistortion(),
      range: 'full',
    });
    const by = findAll(chart, 'path.hidden').map((path) => path.getAttribute('data-by'));
    expect(by).toContain('noise');
    const texts = findAll(chart, 'svg text[data-label]').map((text) => text.textContent ?? '');
    expect(texts).toContain('hidden by noise');
    expect(texts).toEqual(expect.arrayContaining(['total', '2nd', '3rd']));
    const line = find(chart, 'path.total').getAttribute('d') ?? '';
    const last = Number(/([\d.]+),[\d.]+$/.exec(line)?.[1]);
    const noise = findAll(chart, 'path.hidden').find((path) => path.matches('[data-by=noise]'));
    const first = Number(/^M([\d.]+)/.exec(noise?.getAttribute('d') ?? '')?.[1]);
    expect(first).toBeGreaterThan(last);
  });

  for (const width of [280, 358, 640, 1060]) {
    it(`lets no text overlap another at ${width} px`, async () => {
      for (const range of ['low', 'full'] as const) {
        for (const unit of ['percent', 'db'] as const) {
          const chart = await mount(
            'll-distortion-chart',
            { distortion: sampleDistortion(), channel: 'FL', range, unit, colour: 'var(--front)' },
            width,
          );
          expect(overlappingTexts(chart)).toEqual([]);
          expect(find(chart, 'svg').getBoundingClientRect().width).toBeLessThanOrEqual(width);
          const { scrollWidth, clientWidth } = find(chart, 'figure');
          expect(scrollWidth).toBeLessThanOrEqual(clientWidth);
        }
      }
    });
  }

  it('moves its cursor by keys and reads every product there, told or hidden', async () => {
    const chart = await mount('ll-distortion-chart', { distortion: plainCurves, channel: 'FL' });
    const slider = find(chart, '[role=slider]');
    slider.focus();
    await settle(chart);
    expect(plain(slider.ariaValueText ?? '')).toBe(
      '50 Hz: total 0.50 %, 2nd 0.50 %, 3rd under 0.32 % (the room), 4th under 0.32 % (the room), 5th under 0.32 % (the room)',
    );
    await userEvent.keyboard('{End}');
    await settle(chart);
    expect(plain(slider.ariaValueText ?? '')).toBe(
      '100 Hz: total under 1.0 % (noise), 2nd under 0.10 % (noise), 3rd – (beyond the sweep), 4th – (beyond the sweep), 5th – (beyond the sweep)',
    );
    expect(plain(find(chart, '.readout').textContent ?? '')).toContain('100 Hz');
    await userEvent.keyboard('{Home}');
    await settle(chart);
    expect(plain(slider.ariaValueText ?? '')).toMatch(/^25 Hz: total 1.0 %/);
  });

  it('writes decibels on demand, and relates to the level without the room', async () => {
    const chart = await mount('ll-distortion-chart', {
      distortion: sampleDistortion(),
      channel: 'FL',
    });
    const press = async (text: string): Promise<void> => {
      const button = findAll(chart, 'button').find((one) => plain(one.textContent ?? '') === text);
      await userEvent.click(button ?? chart);
      await settle(chart);
      expect(button?.getAttribute('aria-pressed')).toBe('true');
    };
    const before = find(chart, 'path.h2').getAttribute('d');
    await press('dB');
    const ticks = findAll(chart, 'text.tick').map((tick) => plain(tick.textContent ?? ''));
    expect(ticks).toContain('−40');
    expect(find(chart, 'path.h2').getAttribute('d')).toBe(before);
    await press('Without room');
    expect(find(chart, 'path.h2').getAttribute('d')).not.toBe(before);
    await press('Whole range');
    expect(findAll(chart, 'text.tick').map((tick) => plain(tick.textContent ?? ''))).toContain(
      '10 k',
    );
  });

  it('holds a table of its numbers and all of them to copy', async () => {
    const chart = await mount('ll-distortion-chart', { distortion: plainCurves, channel: 'FL' });
    await userEvent.click(find(chart, 'summary'));
    await settle(chart);
    const head = findAll(chart, 'thead th').map((cell) => plain(cell.textContent ?? ''));
    expect(head).toEqual(['Hz', 'total, %', '2nd, %', '3rd, %', '4th, %', '5th, %']);
    const rows = findAll(chart, 'tbody tr').map((row) => textOf(row));
    expect(rows).toEqual(['25.0 1.0 1.0 < 0.32 < 0.32 < 0.32', '100 < 1.0 < 0.10 – – –']);
    const lines = find<CopyButton>(chart, 'll-copy-button').written.trim().split('\n');
    expect(lines[0]).toMatch(/^Hz\ttotal dB\ttotal floor dB\t2nd dB\t2nd floor dB\t/);
    expect(lines[1]).toMatch(/^25\t-40\t-60\t-40\t-60\t\t-50\t/);
  });

  it('draws nothing that is no number', async () => {
    const curves = sampleDistortion();
    const broken = {
      ...curves,
      total: { ...curves.total, db: curves.total.db.map((db, i) => (i % 3 ? db : NaN)) },
    };
    const chart = await mount('ll-distortion-chart', { distortion: broken, channel: 'FL' });
    find(chart, '[role=slider]').focus();
    await userEvent.keyboard('{ArrowRight}');
    await settle(chart);
    expect(notNumbers(chart)).toEqual([]);
  });

  it('says why there is nothing to draw', async () => {
    const sentence = 'No distortion: a short sweep. Use sweeps of 2 s or more.';
    const refused = await mount('ll-distortion-chart', {
      distortion: { kind: 'cannot tell', sentence },
    });
    expect(find(refused, 'p').textContent).toBe(sentence);
    const nothing = await mount('ll-distortion-chart', { distortion: null });
    expect(find(nothing, 'p').textContent).toBe('No distortion read yet.');
  });
});
