import { describe, expect, it } from 'vitest';
import { logMean } from '../../../dsp/response/log-mean';
import { logGrid } from '../../../dsp/response/smoothing';
import { expectClose } from '../../close';

describe('logMean', () => {
  it('weighs octaves alike, however the frequencies stand', () => {
    // ∫ log2(f/100) d log2 f from 100 to 1600, over four octaves, is 2.
    const even = logGrid(50, 3200, 12);
    const linear = Float64Array.from({ length: 3200 }, (_, n) => n + 1);
    for (const hz of [even, linear]) {
      const values = hz.map((f) => Math.log2(f / 100));
      expectClose(logMean(hz, values, 100, 1600), 2, 1e-4);
    }
  });

  it('lets the ends of a curve stand for half a step', () => {
    expectClose(logMean([100, 200, 400], [0, 4, 0], 50, 800), 2, 1e-12);
  });

  it('leaves out what is not told, and is null when nothing is', () => {
    const hz = [100, 200, 400, 800];
    expectClose(logMean(hz, [3, null, 3, 9], 100, 400), 3, 1e-12);
    expect(logMean(hz, [1, null, null, 1], 150, 500)).toBeNull();
    expect(logMean(hz, [1, 1, 1, 1], 210, 390)).toBeNull();
  });

  it('reads a curve of a single frequency', () => {
    expect(logMean([500], [7], 100, 1000)).toBe(7);
  });

  it.each([
    [0, 100],
    [100, 100],
    [200, 100],
    [NaN, 100],
    [100, Infinity],
  ])('refuses the band %d to %d Hz', (low, high) => {
    expect(() => logMean([100], [1], low, high)).toThrow(RangeError);
  });
});
