import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../../components/theme/base.css';
import type { ChartHandle, HandleMove } from '../../../../components/charts/workbench/chart-handle';
import '../../../../components/charts/workbench/workbench-chart';
import type { CurveAxes, CurveTrace } from '../../../../components/charts/curve/curve-trace';
import type { NumberTable } from '../../../../components/charts/number-table';
import { expectClose } from '../../../close';
import { find, findAll, mount, notNumbers, overlappingTexts, plain, settle } from '../../mount';
import { expectQuiet } from '../../quiet';

expectQuiet();

const x = Array.from({ length: 241 }, (_, n) => 15 * 2 ** (n / 48));
const axes: CurveAxes = {
  x: { kind: 'frequency', low: 15, high: 480 },
  y: { unit: 'dB', digits: 1, low: -30, high: 12 },
};
const traces: CurveTrace[] = [
  { name: 'Sum', colour: 'var(--ink)', stroke: 'solid', weight: 'strong', x, y: x.map(() => 0) },
  { name: 'Subs', colour: 'var(--sub)', stroke: 'dotted', x, y: x.map((f) => -f / 20) },
];
const crossover: ChartHandle = {
  id: 'crossover',
  label: 'Crossover of Fronts',
  text: 'crossover 80 Hz',
  hz: 80,
  stepsHz: [40, 60, 80, 100, 120],
  proposedHz: 60,
  end: 'bottom',
};
const lowPass: ChartHandle = {
  id: 'low-pass',
  label: 'Sub low-pass',
  text: 'sub low-pass 120 Hz',
  hz: 120,
  stepsHz: [80, 120, 150],
  proposedHz: null,
  end: 'top',
};

async function chartWith(handles: readonly ChartHandle[], width = 700) {
  const chart = await mount('ll-workbench-chart', { traces, axes, handles, label: 'Test' }, width);
  const moves: HandleMove[] = [];
  chart.addEventListener('ll-move', (event) => moves.push(event.detail));
  return { chart, moves };
}

describe('the workbench chart', () => {
  it('stands its handles where the scale says', async () => {
    const { chart } = await chartWith([crossover]);
    const { x1, x2 } = find<SVGLineElement>(chart, 'line.handle-line');
    // By hand: 640 px from 46 px span ln(480/15), and 80 Hz lies ln(80/15) along.
    expectClose(x1.baseVal.value, 46 + (640 * Math.log(80 / 15)) / Math.log(32), 0.06);
    expect(x2.baseVal.value).toBe(x1.baseVal.value);
    expect(findAll(chart, '[data-proposed=crossover]')).toHaveLength(1);
  });

  it('is a slider in words, moved by keys in the processor’s steps', async () => {
    const { chart, moves } = await chartWith([crossover]);
    const slider = find(chart, '[data-handle=crossover]');
    expect(slider.getAttribute('role')).toBe('slider');
    expect(slider.getAttribute('aria-label')).toBe('Crossover of Fronts');
    expect(plain(slider.getAttribute('aria-valuetext') ?? '')).toBe('80 Hz');
    expect(slider.getAttribute('aria-valuemin')).toBe('40');
    expect(slider.getAttribute('aria-valuemax')).toBe('120');
    slider.focus();
    await userEvent.keyboard('{ArrowRight}{ArrowLeft}{Home}{End}{PageDown}x');
    const set = moves.filter(({ done }) => done);
    expect(set.map(({ value }) => value)).toEqual([100, 60, 40, 120, 40]);
    expect(moves).toEqual(set.flatMap((move) => [{ ...move, done: false }, move]));
  });

  it('follows a key that is held and sets the handle once, when it is let go or the focus goes', async () => {
    const { chart, moves } = await chartWith([crossover]);
    const slider = find(chart, '[data-handle=crossover]');
    slider.focus();
    await userEvent.keyboard('{ArrowRight>3}');
    expect(moves.map(({ done }) => done)).toEqual([false, false, false]);
    await userEvent.keyboard('{/ArrowRight}');
    expect(moves.slice(3)).toEqual([{ id: 'crossover', value: 100, done: true }]);
    await userEvent.keyboard('{Home>}');
    slider.blur();
    expect(moves.slice(4)).toEqual([
      { id: 'crossover', value: 40, done: false },
      { id: 'crossover', value: 40, done: true },
    ]);
    await userEvent.keyboard('{/Home}');
    expect(moves).toHaveLength(6);
  });

  it('follows the pointer from step to step and ends where it is let go', async () => {
    const { chart, moves } = await chartWith([crossover]);
    const slider = find(chart, '[data-handle=crossover]');
    const box = slider.getBoundingClientRect();
    const pixels = (hz: number) => (640 * Math.log(hz / 80)) / Math.log(32);
    const at = (type: string, hz: number) =>
      slider.dispatchEvent(
        new PointerEvent(type, {
          pointerId: 1,
          bubbles: true,
          clientX: box.left + box.width / 2 + pixels(hz),
          clientY: box.top + 20,
        }),
      );
    slider.setPointerCapture = () => undefined;
    at('pointerdown', 80);
    at('pointermove', 84);
    await settle(chart);
    expect(moves).toEqual([]);
    at('pointermove', 104);
    await settle(chart);
    expect(moves).toEqual([{ id: 'crossover', value: 100, done: false }]);
    at('pointermove', 300);
    at('pointerup', 300);
    expect(moves.slice(1)).toEqual([
      { id: 'crossover', value: 120, done: false },
      { id: 'crossover', value: 120, done: true },
    ]);
    at('pointermove', 40);
    await settle(chart);
    expect(moves).toHaveLength(3);
  });

  it('stays with the pointer when a key goes up meanwhile', async () => {
    const { chart, moves } = await chartWith([crossover]);
    const slider = find(chart, '[data-handle=crossover]');
    slider.setPointerCapture = () => undefined;
    slider.focus();
    slider.dispatchEvent(new PointerEvent('pointerdown', { pointerId: 1, bubbles: true }));
    await userEvent.keyboard('{Shift>}{/Shift}');
    expect(moves).toEqual([]);
    slider.dispatchEvent(new PointerEvent('pointerup', { pointerId: 1, bubbles: true }));
    expect(moves).toEqual([{ id: 'crossover', value: 80, done: true }]);
  });

  it('keeps a handle that lies beyond the axis within reach at its end', async () => {
    const { chart, moves } = await chartWith([{ ...crossover, hz: 1000, stepsHz: [80, 1000] }]);
    const slider = find(chart, '[data-handle=crossover]');
    expect(slider.getBoundingClientRect().right).toBeLessThanOrEqual(
      chart.getBoundingClientRect().right + 16,
    );
    slider.focus();
    await userEvent.keyboard('{ArrowLeft}');
    expect(moves.map(({ value }) => value)).toEqual([80, 80]);
  });

  for (const width of [280, 358, 700, 1060]) {
    it(`lets no text overlap another at ${width} px, wherever the handles stand`, async () => {
      for (const hz of [16, 40, 80, 119, 120, 121, 400, 470]) {
        const { chart } = await chartWith([{ ...crossover, hz }, lowPass], width);
        expect(overlappingTexts(chart)).toEqual([]);
        expect(notNumbers(chart)).toEqual([]);
        expect(find(chart, 'svg').getBoundingClientRect().width).toBeLessThanOrEqual(width);
      }
    });
  }

  it('reads every line at the cursor and keeps all numbers behind it', async () => {
    const { chart } = await chartWith([crossover]);
    const cursor = find(chart, '.cursor');
    cursor.focus();
    await settle(chart);
    expect(plain(cursor.getAttribute('aria-valuetext') ?? '')).toMatch(
      /^\d+ Hz: Sum 0\.0 dB, Subs −\d+\.\d dB$/,
    );
    const { numbers } = find<NumberTable>(chart, 'll-number-table');
    const lines = (numbers?.copy() ?? '').trim().split('\n');
    expect(lines[0]).toBe('Hz\tSum dB\tSubs dB');
    expect(lines).toHaveLength(242);
    expect(lines[1]).toBe('15\t0\t-0.75');
  });
});
