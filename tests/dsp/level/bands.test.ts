import { describe, expect, it } from 'vitest';
import { bandEdges, bandMidpoints } from '../../../dsp/level/bands';
import { expectClose } from '../../close';

describe('bandMidpoints', () => {
  it('includes both ends when they are midpoints, and nothing beyond', () => {
    expectClose([...bandMidpoints(10, 100, 1)], [15.8489, 31.6228, 63.0957], 1e-4);
    expect(bandMidpoints(100, 1000, 3)).toHaveLength(11);
    expect(bandMidpoints(101, 999, 3)).toHaveLength(9);
  });

  it('puts 1 kHz on an edge, not on a midpoint, for an even number of bands to the octave', () => {
    const [below, above] = bandMidpoints(950, 1050, 12);
    expectClose((below ?? 0) * (above ?? 0), 1e6, 1e-3);
  });

  it('may find none', () => {
    expect(bandMidpoints(1010, 1020, 1)).toHaveLength(0);
  });

  it.each([
    [0, 100, 3],
    [200, 100, 3],
    [20, Infinity, 3],
    [20, 100, 1.5],
    [20, 100, 0],
  ])('refuses %d to %d Hz by %d', (low, high, fraction) => {
    expect(() => bandMidpoints(low, high, fraction)).toThrow(RangeError);
  });
});

describe('bandEdges', () => {
  it('meet those of the next band', () => {
    for (const fraction of [1, 3, 6, 24]) {
      const edges = Array.from(bandMidpoints(100, 200, fraction), (hz) => bandEdges(hz, fraction));
      for (let n = 1; n < edges.length; n++) expectClose(edges[n]?.[0], edges[n - 1]?.[1], 1e-9);
    }
  });

  it.each([
    [0, 3],
    [NaN, 3],
    [100, -1],
  ])('refuse %d Hz by %d', (hz, fraction) => {
    expect(() => bandEdges(hz, fraction)).toThrow(RangeError);
  });
});
