import { describe, expect, it } from 'vitest';
import { stretchOf } from '../../../dsp/signal/stretch-of';

const signal = Float64Array.of(1, 2, 3, 4);

describe('stretchOf', () => {
  it('is a view where the signal holds it all', () => {
    const stretch = stretchOf(signal, 1, 2);
    expect([...stretch]).toEqual([2, 3]);
    expect(stretch.buffer).toBe(signal.buffer);
  });

  it.each([
    [-2, 4, [0, 0, 1, 2]],
    [3, 3, [4, 0, 0]],
    [-1, 6, [0, 1, 2, 3, 4, 0]],
    [-9, 2, [0, 0]],
    [9, 2, [0, 0]],
  ])('has zeros outside the signal, from %d for %d', (from, length, expected) => {
    expect([...stretchOf(signal, from, length)]).toEqual(expected);
  });
});
