import { describe, expect, it } from 'vitest';
import { climbProgress, secondsToGo } from '../../../src/soundlevel/climb-progress';

const start = {
  gainDb: -60,
  startDb: -60,
  capDb: -6,
  marginDb: null,
  wantedMarginDb: 25,
  checkedSeconds: null,
};

describe('climbProgress', () => {
  it('goes from the silence to the check, and the seconds left fall', () => {
    const first = climbProgress(start);
    const middle = climbProgress({ ...start, gainDb: -40, marginDb: 5 });
    const check = climbProgress({ ...start, gainDb: -20, marginDb: 25, checkedSeconds: 4 });
    expect([first.progress, middle.progress, check.progress]).toEqual([
      expect.closeTo(0.1, 9),
      expect.closeTo(0.45, 9),
      expect.closeTo(0.9, 9),
    ]);
    expect(first.secondsLeft).toBeGreaterThan(middle.secondsLeft);
    expect(middle.secondsLeft).toBeGreaterThan(check.secondsLeft);
  });

  it('stays within 0 and 1 whatever happens', () => {
    for (const odd of [
      { ...start, capDb: -60 },
      { ...start, gainDb: -80 },
      { ...start, checkedSeconds: 100 },
    ]) {
      const { progress, secondsLeft } = climbProgress(odd);
      expect(progress).toBeGreaterThanOrEqual(0);
      expect(progress).toBeLessThanOrEqual(1);
      expect(secondsLeft).toBeGreaterThan(0);
    }
  });

  it('counts a step for every 6 dB begun', () => {
    expect(secondsToGo(-60, -40) - secondsToGo(-60, -60)).toBeCloseTo(4 * 2.2, 9);
  });
});
