import { describe, expect, it } from 'vitest';
import { sixthOctaves } from '../../../dsp/bass/sixth-octaves';
import { expectClose } from '../../close';
import { hz } from './seat-responses';

describe('sixthOctaves', () => {
  it('cuts two octaves into twelve of nearly equal weight', () => {
    const { edges, shares, weights } = sixthOctaves(hz, 25, 100);
    expect(weights).toHaveLength(12);
    expectClose(
      weights,
      weights.map(() => 1 / 12),
      0.012,
      'edges of stretches lie between frequencies',
    );
    for (let band = 0; band < 12; band++) {
      const own = shares.slice(edges[band], edges[band + 1]);
      expectClose(
        own.reduce((sum, share) => sum + share, 0),
        1,
        1e-12,
      );
    }
  });

  it('holds every frequency of the band once, and each stretch within 1/6 octave', () => {
    const { hz: used, edges } = sixthOctaves(hz, 30, 110);
    expect(edges[0]).toBe(0);
    expect(edges.at(-1)).toBe(used.length);
    for (const [band, from] of edges.slice(0, -1).entries()) {
      const last = (edges[band + 1] ?? 0) - 1;
      // Eleven stretches share 1.87 octaves.
      expect(Math.log2((used[last] ?? 0) / (used[from] ?? 1))).toBeLessThan(1.88 / 11);
    }
  });

  it('joins stretches that hold no frequency', () => {
    const { edges, weights } = sixthOctaves(new Float64Array([25, 26, 90, 100]), 25, 100);
    expect(edges).toEqual([0, 2, 4]);
    expectClose(weights[0] ?? 0, 0.5, 0.2);
  });

  it('refuses a band without frequencies', () => {
    expect(() => sixthOctaves(hz, 1000, 2000)).toThrow(RangeError);
  });
});
