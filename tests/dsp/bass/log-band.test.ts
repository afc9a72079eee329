import { describe, expect, it } from 'vitest';
import { crossoverBand, logBand, smoothOnGrid } from '../../../dsp/bass/log-band';
import { bassGrid } from '../../../dsp/bass/transfer';
import { expectClose } from '../../close';

const hz = bassGrid();

function meanOf(values: Float64Array, lowHz: number, highHz: number): number {
  const { first, weights } = logBand(hz, lowHz, highHz);
  return weights.reduce((sum, weight, k) => sum + weight * (values[first + k] ?? 0), 0);
}

describe('logBand', () => {
  it('gives the mean over log f: (b − a)/ln(b/a) for f itself', () => {
    expectClose(meanOf(hz, 30, 120), 90 / Math.log(4), 0.01, 'trapezoids of 1/48 octave');
    expectClose(
      meanOf(
        hz.map(() => 3),
        30,
        120,
      ),
      3,
      1e-12,
    );
  });

  it('weighs a grid of even steps in hertz alike', () => {
    const even = Float64Array.from({ length: 401 }, (_, n) => 20 + n / 2);
    const { first, weights } = logBand(even, 40, 160);
    const mean = weights.reduce((sum, weight, k) => sum + weight * (even[first + k] ?? 0), 0);
    expectClose(mean, 120 / Math.log(4), 0.01);
  });

  it('reaches half an octave to either side of a crossover', () => {
    const { first, end } = crossoverBand(hz, 60);
    expect(hz[first]).toBeGreaterThanOrEqual(60 / Math.SQRT2 - 1e-6);
    expect(hz[end - 1]).toBeLessThanOrEqual(60 * Math.SQRT2 + 1e-6);
    expect(end - first).toBeGreaterThanOrEqual(48);
  });

  it.each([
    [100, 50],
    [0, 50],
    [1000, 2000],
    [50, 50.1],
  ])('refuses a band from %d to %d Hz', (low, high) => {
    expect(() => logBand(hz, low, high)).toThrow(RangeError);
  });
});

describe('smoothOnGrid', () => {
  it('leaves a constant and, away from the ends, a slope over log f', () => {
    expectClose(
      smoothOnGrid(
        hz,
        hz.map(() => 2),
        6,
      ),
      hz.map(() => 2),
      1e-12,
    );
    const slope = hz.map((f) => Math.log2(f));
    expectClose(smoothOnGrid(hz, slope, 6).slice(8, -8), slope.slice(8, -8), 1e-9);
  });

  it('spreads one entry over 1/6 octave', () => {
    const one = hz.map((_, k) => (k === 100 ? 9 : 0));
    const smooth = smoothOnGrid(hz, one, 6);
    // 1/6 octave holds nine of 48 to the octave.
    expectClose(smooth.slice(94, 107), [0, 0, 1, 1, 1, 1, 1, 1, 1, 1, 1, 0, 0], 1e-9);
  });

  it('refuses other lengths', () => {
    expect(() => smoothOnGrid(hz, new Float64Array(3), 6)).toThrow(RangeError);
    expect(() => smoothOnGrid(hz, hz, 0)).toThrow(RangeError);
  });
});
