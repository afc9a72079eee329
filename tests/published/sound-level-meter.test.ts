// IEC 61672-1:2013, 5.8 (decay) and table 4 (4 kHz tonebursts), both from memory. The table's
// values follow 10·lg(1 − e^(−T/τ)); class 1 limits widen from ±0.5 dB to +1.0, −2.0 dB and more for
// the shortest bursts. Class 1 limits of table 3 from memory as well.
import { describe, expect, it } from 'vitest';
import { sectionsResponse } from '../../dsp/filter/biquad';
import { createFrequencyWeighting } from '../../dsp/level/frequency-weighting';
import { createTimeWeighting } from '../../dsp/level/time-weighting';
import { weightingSections } from '../../dsp/level/weighting-sections';
import { expectClose } from '../close';

const rate = 48_000;
const burstHz = 4000;

/** Greatest time-weighted A level of a burst, dB re the steady tone's. */
function burstResponse(time: 'fast' | 'slow', milliseconds: number): number {
  const tone = (samples: number): Float64Array =>
    Float64Array.from({ length: samples }, (_, n) => Math.sin((2 * Math.PI * burstHz * n) / rate));
  const steady = createFrequencyWeighting('A', rate)(tone(rate)).subarray(rate / 2);
  const steadyPower = steady.reduce((sum, x) => sum + x * x, 0) / steady.length;
  const burst = new Float64Array(rate * 2);
  burst.set(tone((milliseconds * rate) / 1000), 100);
  const weighted = createFrequencyWeighting('A', rate)(burst);
  const weigh = createTimeWeighting(time, rate);
  let greatest = 0;
  for (const x of weighted) greatest = Math.max(greatest, weigh([x]));
  return 10 * Math.log10(greatest / steadyPower);
}

describe('time weighting', () => {
  it.each([
    [1000, 0.0],
    [500, -0.1],
    [200, -1.0],
    [100, -2.6],
    [50, -4.8],
    [20, -8.3],
    [10, -11.1],
    [5, -14.1],
    [2, -18.0],
    [1, -21.0],
  ])('fast answers a burst of %d ms with %d dB', (milliseconds, db) => {
    expectClose(
      burstResponse('fast', milliseconds),
      db,
      0.15,
      'rounded to 0.1 dB; ripple at 8 kHz',
    );
  });

  it.each([
    [1000, -2.0],
    [500, -4.1],
    [200, -7.4],
    [100, -10.2],
    [50, -13.1],
    [20, -17.0],
    [10, -20.0],
    [5, -23.0],
    [2, -27.0],
  ])('slow answers a burst of %d ms with %d dB', (milliseconds, db) => {
    expectClose(
      burstResponse('slow', milliseconds),
      db,
      0.15,
      'rounded to 0.1 dB; ripple at 8 kHz',
    );
  });

  it.each([
    ['fast', 34.7],
    ['slow', 4.34],
  ] as const)('%s falls by %d dB a second', (time, fall) => {
    const weigh = createTimeWeighting(time, rate);
    const before = weigh(new Float64Array(5 * rate).fill(0.3));
    const after = weigh(new Float64Array(rate));
    expectClose(10 * Math.log10(before / after), fall, 0.05);
  });
});

/** Number n of 10^(n/10) Hz, A, C, class 1 limits above and below, dB. */
const goals: readonly (readonly [number, number, number, number, number])[] = [
  [13, -50.5, -6.2, 2.0, 2.0],
  [15, -39.4, -3.0, 1.5, 1.5],
  [18, -26.2, -0.8, 1.0, 1.0],
  [21, -16.1, -0.2, 1.0, 1.0],
  [27, -3.2, 0.0, 1.0, 1.0],
  [30, 0.0, 0.0, 0.7, 0.7],
  [36, 1.0, -0.8, 1.0, 1.0],
  [39, -1.1, -3.0, 1.5, 2.5],
  [42, -6.6, -8.5, 2.5, 16.0],
  [43, -9.3, -11.2, 3.0, Infinity],
];

describe.each([44_100, 48_000, 96_000, 192_000])('frequency weighting at %d Hz', (sampleRate) => {
  it.each(goals)('meets class 1 at 10^(%d/10) Hz', (n, a, c, above, below) => {
    for (const [kind, goal] of [['A', a] as const, ['C', c] as const]) {
      const { re, im } = sectionsResponse(
        weightingSections(kind, sampleRate),
        10 ** (n / 10),
        sampleRate,
      );
      const error = 20 * Math.log10(Math.hypot(re, im)) - goal;
      expect(error).toBeLessThan(above);
      expect(error).toBeGreaterThan(-below);
      // The table is rounded to 0.1 dB; the filter's own error is a small part of that.
      expect(Math.abs(error)).toBeLessThan(0.1);
    }
  });
});
