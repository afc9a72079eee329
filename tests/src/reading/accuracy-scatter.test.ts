import { describe, expect, it } from 'vitest';
import { isQuantileWithin, shareAtLeast } from '../../accuracy/scatter';

const upTo = (count: number): number[] => Array.from({ length: count }, (_, n) => (n + 1) / count);
const percent = (value: number): string => `${100 * value} %`;

describe('limits of an accuracy table', () => {
  it('let a quantile of few cases scatter about them by two standard errors, and no more', () => {
    // Of 100 cases 10 may lie above their 90 % quantile, and by chance some 15.
    expect(isQuantileWithin(upTo(100), 0.9, 0.855)).toBe(true);
    expect(isQuantileWithin(upTo(100), 0.9, 0.83)).toBe(false);
    expect(isQuantileWithin(upTo(2500), 0.9, 0.88)).toBe(false);
  });

  it('do the same for a share that must be reached', () => {
    expect(shareAtLeast('', 44, 100, 0.5, percent).within).toBe(true);
    expect(shareAtLeast('', 38, 100, 0.5, percent).within).toBe(false);
  });

  it('are exceeded where there is no case at all', () => {
    expect(isQuantileWithin([], 0.5, 1)).toBe(false);
    expect(shareAtLeast('', 0, 0, 0.5, percent).within).toBe(false);
  });
});
