import { describe, expect, it } from 'vitest';
import { noiseCurveHz, rateNoise, rateNoiseCriterion } from '../../dsp/level/noise-curves';
import { expectClose } from '../close';

/** Octave-band values of ISO 1996 (1971) NR curves as tables print them, 63 Hz to 8 kHz; from memory. */
const printedRatings: readonly (readonly [number, readonly number[]])[] = [
  [20, [51.3, 39.4, 30.6, 24.3, 20, 16.8, 14.4, 12.6]],
  [30, [59.2, 48.1, 39.9, 34, 30, 26.9, 24.7, 22.9]],
  [50, [75, 65.5, 58.5, 53.5, 50, 47.2, 45.2, 43.5]],
];

/** ANSI/ASA S12.2 NC curves, 63 Hz to 8 kHz; from memory. */
const printedCriteria: readonly (readonly [number, readonly number[]])[] = [
  [20, [51, 40, 33, 26, 22, 19, 17, 16]],
  [35, [60, 52, 45, 40, 36, 34, 33, 32]],
  [65, [80, 75, 71, 68, 66, 64, 63, 62]],
];

describe('NR curves', () => {
  for (const [number, levels] of printedRatings) {
    it(`rate the printed curve of NR ${number} as ${number}`, () => {
      for (const band of noiseCurveHz.keys()) {
        const one = levels.map((level, k) => (k === band ? level : level - 20));
        const { rating, decidedByHz } = rateNoise(one);
        expectClose(rating, number, 0.3);
        expect(decidedByHz).toBe(noiseCurveHz[band]);
      }
    });
  }

  it('do not go below 0 nor above 130', () => {
    expect(rateNoise(new Array<number>(8).fill(-20))).toMatchObject({ rating: 0, isBelow: true });
    expect(rateNoise(new Array<number>(8).fill(140)).rating).toBeNull();
  });
});

describe('NC curves', () => {
  for (const [number, levels] of printedCriteria) {
    it(`rate the printed curve of NC ${number} as ${number}`, () => {
      expectClose(rateNoiseCriterion(levels).rating, number, 1e-9);
    });
  }

  it('take the lowest curve that no band exceeds, between two curves in proportion', () => {
    const levels = [20, 20, 20, 38, 20, 20, 15, 12];
    // NC 30 has 35 dB at 500 Hz and NC 35 has 40 dB.
    expect(rateNoiseCriterion(levels)).toEqual({ rating: 33, isBelow: false, decidedByHz: 500 });
  });

  it('say when a noise lies under or over all of them', () => {
    const quiet = [20, 20, 20, 20, 16.5, 9, 5, 5];
    expect(rateNoiseCriterion(quiet)).toEqual({ rating: 15, isBelow: true, decidedByHz: 1000 });
    expect(rateNoiseCriterion([90, 20, 20, 20, 20, 20, 20, 20]).rating).toBeNull();
  });

  it('refuse other bands and what is no number', () => {
    expect(() => rateNoiseCriterion([30, 30])).toThrow(RangeError);
    expect(() => rateNoise([1, 2, 3, 4, 5, 6, 7, Number.NaN])).toThrow(RangeError);
  });
});
