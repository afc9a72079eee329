import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../components/theme/base.css';
import type { CopyButton } from '../../../components/charts/copy-button';
import '../../../components/charts/response-chart';
import { traceOf, type ResponseTrace } from '../../../components/charts/response-trace';
import type { ChannelLabel } from '../../../src/system/channel';
import { expectClose } from '../../close';
import { inventedReadings, layout524 } from '../fixtures';
import { find, findAll, mount, notNumbers, overlappingTexts, plain, settle } from '../mount';
import { expectQuiet } from '../quiet';

expectQuiet();

function traces(...labels: ChannelLabel[]): ResponseTrace[] {
  const readings = inventedReadings(layout524);
  return labels.flatMap((label) => {
    const reading = readings.channels.find(({ channel }) => channel === label);
    return reading ? (traceOf(reading, 'var(--surround)') ?? []) : [];
  });
}

/** A speaker that is flat above 50 Hz, and so read without looking at the drawing. */
const plainTrace: ResponseTrace = {
  channel: 'FL',
  colour: 'rgb(31, 95, 168)',
  marks: [{ downDb: 3, levelDb: -3, hz: 50, lowHz: 45, highHz: 56 }],
  curves: {
    response: {
      hz: [12.5, 25, 50, 100, 200, 400],
      db: [-24, -12, -3, 0, 0, 0],
      noiseDb: [-30, -36, -36, -36, -36, -36],
    },
    fit: null,
    envelope: { startSeconds: 0, stepSeconds: 0.001, level: [] },
  },
};

describe('the response chart', () => {
  it('draws the curve where scale and numbers say, to a tenth of a pixel', async () => {
    const chart = await mount('ll-response-chart', { traces: [plainTrace] }, 640);
    const path = find<SVGPathElement>(chart, 'path.curve.lead').getAttribute('d');
    // By hand: 594 px from 34 px span ln(500/12), and 306 px from 28 px span 42 dB from +6 dB down.
    expect(path).toBe('M40.5,246.6L150.9,159.1L261.3,93.6L371.7,71.7L482.1,71.7L592.5,71.7');
  });

  it('writes curve, crossover and roll-off beside what they mean', async () => {
    const chart = await mount('ll-response-chart', {
      traces: traces('SiL', 'SiR'),
      crossoverHz: 80,
    });
    const texts = findAll<SVGTextElement>(chart, 'svg text[data-label]').map((text) =>
      plain(text.textContent ?? ''),
    );
    expect(texts).toContain('SiL measured');
    expect(texts).toContain('SiR');
    expect(texts).toContain('room noise');
    expect(texts).toContain('fit, 90 % band');
    expect(texts).toContain('crossover 80 Hz');
    expect(texts.filter((text) => /^−(3|6|10) dB at \d+ Hz, \d+–\d+$/.test(text))).toHaveLength(3);
  });

  for (const width of [280, 358, 640, 1060]) {
    for (const range of ['low', 'full'] as const) {
      it(`lets no text overlap another at ${width} px, ${range} range`, async () => {
        for (const pair of [
          ['SiL', 'SiR'],
          ['TpFL', 'TpFR'],
          ['Sub 1', 'Sub 2'],
          ['FC'],
        ] as const) {
          const chart = await mount(
            'll-response-chart',
            { traces: traces(...pair), crossoverHz: 80, proposedHz: 100, range },
            width,
          );
          expect(overlappingTexts(chart)).toEqual([]);
          expect(find(chart, 'svg').getBoundingClientRect().width).toBeLessThanOrEqual(width);
        }
      });
    }
  }

  it('sets a roll-off mark on the fit, so far below its flat part', async () => {
    const readings = inventedReadings(layout524);
    const reading = readings.channels.find(({ channel }) => channel === 'SiL');
    if (!reading?.curves?.fit) throw new RangeError('no fit');
    const { fit } = reading.curves;
    const raised = { ...fit, db: fit.db.map((db) => db + 5) };
    const trace = traceOf({ ...reading, curves: { ...reading.curves, fit: raised } }, 'teal');
    const flatDb = fit.db.at(-1) ?? 0;
    expectClose(
      trace?.marks.map(({ levelDb }) => levelDb - flatDb),
      [2, -1, -5],
      1e-9,
    );
  });

  it('moves its cursor by keys and reads every curve there', async () => {
    const chart = await mount('ll-response-chart', { traces: [plainTrace], crossoverHz: 100 });
    const slider = find(chart, '[role=slider]');
    slider.focus();
    await settle(chart);
    expect(plain(slider.ariaValueText ?? '')).toBe('100 Hz: FL 0.0 dB, noise −36.0 dB');
    await userEvent.keyboard('{ArrowLeft}');
    await settle(chart);
    expect(plain(slider.ariaValueText ?? '')).toBe('50 Hz: FL −3.0 dB, noise −36.0 dB');
    expect(plain(find(chart, '.readout').textContent ?? '')).toContain('50 Hz');
    await userEvent.keyboard('{Home}');
    await settle(chart);
    expect(plain(slider.ariaValueText ?? '')).toMatch(/^12.5 Hz: FL −24.0 dB/);
    await userEvent.keyboard('{ArrowLeft}{End}{ArrowRight}');
    await settle(chart);
    expect(plain(slider.ariaValueText ?? '')).toMatch(/^400 Hz/);
  });

  it('puts its cursor on the nearest point under the pointer', async () => {
    const chart = await mount('ll-response-chart', { traces: [plainTrace] }, 640);
    const slider = find(chart, '[role=slider]');
    const box = slider.getBoundingClientRect();
    // 261.3 px from the chart's left edge is 50 Hz; the plane begins 34 px from it.
    slider.dispatchEvent(
      new PointerEvent('pointermove', {
        clientX: box.left + 261.3 - 34 + 9,
        clientY: box.top + 40,
      }),
    );
    await settle(chart);
    expect(find(chart, '.cursor-mark').getAttribute('data-hz')).toBe('50.00');
  });

  it('shows other frequencies on demand', async () => {
    const chart = await mount('ll-response-chart', { traces: traces('SiL') });
    const ticks = () => findAll(chart, 'text.tick').map((tick) => plain(tick.textContent ?? ''));
    expect(ticks()).not.toContain('10 k');
    await userEvent.click(findAll(chart, '.range button')[1] ?? chart);
    await settle(chart);
    expect(ticks()).toContain('10 k');
  });

  it('holds a table of its numbers and all of them to copy', async () => {
    const chart = await mount('ll-response-chart', { traces: traces('SiL', 'SiR') });
    await userEvent.click(find(chart, 'summary'));
    await settle(chart);
    const head = findAll(chart, 'thead th').map((cell) => plain(cell.textContent ?? ''));
    expect(head).toEqual(['Hz', 'SiL, dB', 'fit, dB', 'fit 90 %, dB', 'noise, dB', 'SiR, dB']);
    expect(findAll(chart, 'tbody tr').length).toBeGreaterThan(30);
    const lines = find<CopyButton>(chart, 'll-copy-button').written.trim().split('\n');
    expect(lines).toHaveLength(1 + (traces('SiL')[0]?.curves.response.hz.length ?? 0));
    expect(lines[1]).toMatch(/^15\t-?[\d.]+\t-?[\d.]+\t/);
  });

  it('draws gaps, not nonsense, where numbers are missing', async () => {
    const [whole] = traces('SiL');
    if (!whole) throw new RangeError('no trace');
    const gap = (values: readonly number[]) => values.map((value, i) => (i % 3 ? value : NaN));
    const { response, fit } = whole.curves;
    const broken: ResponseTrace = {
      ...whole,
      marks: [],
      curves: {
        ...whole.curves,
        response: { hz: response.hz, db: gap(response.db), noiseDb: response.hz.map(() => NaN) },
        fit: fit && { ...fit, low: gap(fit.low) },
      },
    };
    const chart = await mount('ll-response-chart', { traces: [broken], crossoverHz: NaN });
    find(chart, '[role=slider]').focus();
    await userEvent.keyboard('{ArrowRight}');
    await settle(chart);
    expect(notNumbers(chart)).toEqual([]);
  });

  it('says so when there is nothing to draw', async () => {
    const chart = await mount('ll-response-chart', { traces: [] });
    expect(find(chart, 'p').textContent).toBe('No response to draw yet.');
  });
});
