import { describe, expect, it } from 'vitest';
import '../../../../components/theme/base.css';
import '../../../../components/probe/noise/spectrum-chart';
import { layOutSpectrum } from '../../../../components/probe/noise/spectrum-layout';
import {
  deep,
  find,
  findAll,
  mount,
  notNumbers,
  overlappingTexts,
  settle,
  textOf,
} from '../../mount';
import { expectQuiet } from '../../quiet';
import { inventedSpectrum } from './invented-spectrum';

expectQuiet();

const boxes = (path: string) => path.split('M').length - 1;

const laidOut = (spectrum: ReturnType<typeof inventedSpectrum>, lastTopDb: number | null = null) =>
  layOutSpectrum({ spectrum, bandsPerOctave: 3, range: 'full', width: 800, lastTopDb });

describe('a spectrum in pixels', () => {
  it('has a box a band; faint where coherence or margin is low', () => {
    const spectrum = inventedSpectrum(3);
    const layout = laidOut(spectrum);
    const low = spectrum.hz.filter((hz) => hz < 60).length;
    expect(boxes(layout.doubtful)).toBe(low);
    expect(boxes(layout.trusted)).toBe(spectrum.hz.length - low);
    expect(boxes(layout.coherence)).toBe(spectrum.hz.length);
    expect(boxes(layout.floor)).toBe(spectrum.noiseDb.filter((db) => db !== null).length);
  });

  it('has no lane of coherence when listening', () => {
    const spectrum = inventedSpectrum(3);
    const layout = laidOut({ ...spectrum, coherence: spectrum.hz.map(() => null) });
    expect(layout.lane).toBeNull();
    expect(layout.coherence).toBe('');
  });

  it('keeps its level axis while the spectrum fits, and moves it when it does not', () => {
    const { topDb } = laidOut(inventedSpectrum(3));
    expect(topDb).toBe(70);
    expect(laidOut(inventedSpectrum(3, 4), topDb).topDb).toBe(70);
    expect(laidOut(inventedSpectrum(3, 12), topDb).topDb).toBe(80);
    expect(laidOut(inventedSpectrum(3, -40), topDb).topDb).toBe(30);
  });

  it('stays inside its plot, whatever the levels', () => {
    const spectrum = inventedSpectrum(24);
    const wild = { ...spectrum, db: spectrum.db.map((db, index) => (index % 2 ? -300 : db)) };
    const layout = laidOut(wild);
    const heights = [...layout.trusted.matchAll(/V([\d.-]+)/g)].map((match) => Number(match[1]));
    expect(Math.min(...heights)).toBeGreaterThanOrEqual(layout.plot.top);
    expect(Math.max(...heights)).toBeLessThanOrEqual(layout.plot.bottom);
  });
});

describe('the spectrum chart', () => {
  it('fits phone and desk, in every resolution, with no text on another', async () => {
    for (const width of [330, 640, 1000]) {
      for (const bandsPerOctave of [1, 3, 24]) {
        const chart = await mount(
          'll-spectrum-chart',
          { spectrum: inventedSpectrum(bandsPerOctave), bandsPerOctave },
          width,
        );
        expect(notNumbers(chart)).toEqual([]);
        expect(overlappingTexts(chart)).toEqual([]);
        expect(chart.scrollWidth).toBeLessThanOrEqual(width);
      }
    }
  });

  it('tells its bands in numbers', async () => {
    const spectrum = inventedSpectrum(3);
    const chart = await mount('ll-spectrum-chart', { spectrum, channel: 'FL' });
    find<HTMLElement>(chart, 'summary').click();
    await settle(chart);
    const rows = findAll(chart, 'tbody tr').map((row) => textOf(row));
    expect(rows).toHaveLength(spectrum.hz.length);
    // By hand: 62 − 10 log(1 + 0.055⁴) dB, 34 − 6 log 10 dB.
    expect(rows).toContain('1000 62.0 28.0 0.98');
    expect(find(chart, 'thead').textContent).toMatch(/level, dB SPL.*coherence/s);
  });

  it('has no column of coherence when listening', async () => {
    const whole = inventedSpectrum(3);
    const spectrum = { ...whole, coherence: whole.hz.map(() => null) };
    const chart = await mount('ll-spectrum-chart', { spectrum, channel: 'FL' });
    find<HTMLElement>(chart, 'summary').click();
    await settle(chart);
    expect(findAll(chart, 'tbody tr').map((row) => textOf(row))).toContain('1000 62.0 28.0');
    expect(find(chart, 'thead').textContent).not.toContain('coherence');
  });

  it('waits for its first spectrum in a sentence', async () => {
    const chart = await mount('ll-spectrum-chart', { spectrum: null });
    expect(findAll(chart, 'svg')).toEqual([]);
  });

  it('draws at most ten times a second and grows no elements', async () => {
    const chart = await mount('ll-spectrum-chart', {
      spectrum: inventedSpectrum(24),
      bandsPerOctave: 24,
    });
    await settle(chart);
    const nodes = deep(chart).length;
    let drawings = 0;
    const path = find<SVGPathElement>(chart, '.trusted');
    const observer = new MutationObserver(() => drawings++);
    observer.observe(path, { attributes: true, attributeFilter: ['d'] });
    const started = performance.now();
    for (let turn = 0; turn < 60; turn++) {
      chart.spectrum = inventedSpectrum(24, turn / 10);
      await new Promise((resolve) => setTimeout(resolve, 10));
    }
    const seconds = (performance.now() - started) / 1000;
    observer.disconnect();
    expect(drawings).toBeGreaterThan(0);
    expect(drawings).toBeLessThanOrEqual(Math.ceil(seconds * 10) + 1);
    expect(deep(chart)).toHaveLength(nodes);
  });
});
