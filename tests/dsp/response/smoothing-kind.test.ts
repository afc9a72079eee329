import { describe, expect, it } from 'vitest';
import type { PowerSpectrum } from '../../../dsp/response/power-spectrum';
import { smoothingKinds, smoothingOctaves, smoothKind } from '../../../dsp/response/smoothing-kind';
import { logGrid } from '../../../dsp/response/smoothing';
import { seededRandom } from '../../../dsp/signal/random';
import { expectClose } from '../../close';

const random = seededRandom(41);
const noisy: PowerSpectrum = {
  hzPerBin: 0.75,
  power: Float64Array.from({ length: 32_001 }, () => random() ** 4),
};

/** Σ P_k · overlap of bin k with the band, over the sum of the overlaps. */
function directMean({ power, hzPerBin }: PowerSpectrum, hz: number, octaves: number): number {
  const [low, high] = [hz / 2 ** (octaves / 2), hz * 2 ** (octaves / 2)];
  const top = (power.length - 1) * hzPerBin;
  let sum = 0;
  let width = 0;
  for (let k = 0; k < power.length; k++) {
    const from = Math.max((k - 0.5) * hzPerBin, low, 0);
    const to = Math.min((k + 0.5) * hzPerBin, high, top);
    if (to <= from) continue;
    sum += (power[k] ?? 0) * (to - from);
    width += to - from;
  }
  return sum / width;
}

const widths = {
  '1/1': () => 1,
  '1/2': () => 0.5,
  '1/3': () => 1 / 3,
  '1/6': () => 1 / 6,
  '1/12': () => 1 / 12,
  '1/24': () => 1 / 24,
  '1/48': () => 1 / 48,
  // By hand at the frequencies of the test: ends, and t = ½ at the geometric mean of 100 and 4000.
  variable: (hz: number) => (hz <= 100 ? 1 / 48 : hz >= 4000 ? 1 / 3 : 1 / 12),
} as const;

describe('smoothKind', () => {
  const hz = [15, 63, 100, Math.sqrt(100 * 4000), 4000, 9000, 23_500];

  it.each(Object.entries(widths))('%s is the mean over the bins of its band', (kind, width) => {
    const read = smoothKind(noisy, hz, kind as keyof typeof widths);
    const expected = hz.map((each) => directMean(noisy, each, width(each)));
    expectClose([...read], expected, 1e-9);
  });

  it('leaves bins as they are when there is none', () => {
    const read = smoothKind(noisy, [0.75, 750, 750.3, 24_000], 'none');
    expect([...read]).toEqual([1, 1000, 1000, 32_000].map((k) => noisy.power[k]));
  });

  it.each(smoothingKinds)('%s leaves a flat response flat', (kind) => {
    const flat = { hzPerBin: 0.75, power: new Float64Array(32_001).fill(2) };
    const grid = logGrid(10, 20_000, 96);
    expectClose(smoothKind(flat, grid, kind), new Float64Array(grid.length).fill(2), 1e-9);
  });

  it.each([...smoothingKinds.map((kind) => [kind, 0] as const), ['none', 24_001] as const])(
    '%s refuses %d Hz',
    (kind, each) => {
      expect(() => smoothKind(noisy, [each], kind)).toThrow(RangeError);
      expect(() => smoothKind(noisy, [NaN], kind)).toThrow(RangeError);
    },
  );
});

describe('the varying width', () => {
  it('is 1/48 octave in the bass, 1/3 in the treble, 1/12 half way', () => {
    const read = [10, 100, Math.sqrt(400_000), 4000, 20_000];
    const octaves = read.map((hz) => smoothingOctaves('variable', hz));
    expectClose(octaves, [1 / 48, 1 / 48, 1 / 12, 1 / 3, 1 / 3], 1e-12);
  });

  it('never falls, has no step, and lets both edges of the band rise', () => {
    const grid = logGrid(20, 20_000, 200);
    const octaves = Array.from(grid, (hz) => smoothingOctaves('variable', hz));
    for (const [n, width] of octaves.entries()) {
      const before = octaves[n - 1];
      if (before === undefined) continue;
      expect(width).toBeGreaterThanOrEqual(before);
      // The steepest growth is ln 16 · π/2 / ln 40 a neper of frequency.
      expect(width / before).toBeLessThan(2 ** (1.181 / 200));
      expect(width - before).toBeLessThan(2 / 200);
    }
  });

  it('refuses frequencies that are none', () => {
    for (const hz of [0, -5, NaN, Infinity]) {
      expect(() => smoothingOctaves('variable', hz)).toThrow(RangeError);
    }
  });
});
