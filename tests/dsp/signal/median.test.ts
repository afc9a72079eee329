import { describe, expect, it } from 'vitest';
import { median } from '../../../dsp/signal/median';

describe('median', () => {
  it.each([
    [[], 0],
    [[7], 7],
    [[9, -1, 4], 4],
    [[4, 1, 10, 2], 3],
  ])('of %j is %d', (values, expected) => {
    expect(median(values)).toBe(expected);
  });

  it('leaves the values in their order', () => {
    const values = [3, 1, 2];
    median(values);
    expect(values).toEqual([3, 1, 2]);
  });
});
