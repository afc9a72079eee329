import { describe, expect, it } from 'vitest';
import { ventedAlignment, ventedFromDriver } from '../../../dsp/room/box';
import { boxCutoffHz } from '../../../dsp/room/truth';
import { expectClose } from '../../close';

describe('vented boxes', () => {
  it('have the −3 dB frequencies of the lossless alignments', () => {
    // Qt, h, α, f3/fs: quasi-Butterworth 3, Butterworth 4 and Chebyshev 4 (0.1 dB) of
    // Thiele 1961/1971 and Small 1973, recomputed in double precision.
    const table = [
      [0.18, 1.9968, 10.4449, 2.6792],
      [0.25, 1.4606, 4.8667, 1.8494],
      [0.3, 1.2354, 3.0293, 1.4679],
      [0.382683, 1, 1.414214, 1],
      [0.4762, 0.8106, 0.6822, 0.7058],
    ] as const;
    for (const [qt, h, alpha, ratio] of table) {
      const box = ventedFromDriver({ driverHz: 30, qt, h, alpha, ql: 1e9 });
      expectClose(boxCutoffHz(box) / 30, ratio, 0.0006, 'the table has four digits');
    }
  });

  it('run from ripple to gentle along one path', () => {
    // From t = 0 on |H|² = w⁸/(w⁸ + 4t w⁶ + 1), which is a half where w⁸ − 4t w⁶ = 1.
    for (const t of [0, 0.25, 0.5, 1]) {
      const w = boxCutoffHz(ventedAlignment(1, t));
      expectClose(w ** 8 - 4 * t * w ** 6, 1, 1e-6);
    }
    // Below, poles of the circle with less real part: computed apart from this code.
    const rippled = [-1, -0.5].map((t) => boxCutoffHz(ventedAlignment(1, t)));
    expectClose(rippled, [0.775, 0.888], 0.001);
  });

  it('lose level at the tuning when the box leaks', () => {
    const driver = { driverHz: 30, qt: 0.382683, h: 1, alpha: 1.414214 };
    const tight = boxCutoffHz(ventedFromDriver({ ...driver, ql: 1e9 }));
    expect(boxCutoffHz(ventedFromDriver({ ...driver, ql: 5 }))).toBeGreaterThan(tight * 1.05);
  });

  it('refuse values that mean nothing', () => {
    expect(() => ventedAlignment(40, 1.2)).toThrow(RangeError);
    const driver = { driverHz: 30, qt: 0, h: 1, alpha: 1, ql: 7 };
    expect(() => ventedFromDriver(driver)).toThrow(RangeError);
  });
});
