import { describe, expect, it } from 'vitest';
import { createTimeWeighting } from '../../../dsp/level/time-weighting';
import { expectClose } from '../../close';

const rate = 48_000;

describe('createTimeWeighting', () => {
  it('settles at the mean square of a steady sound', () => {
    const weigh = createTimeWeighting('fast', rate);
    expectClose(weigh(new Float64Array(3 * rate).fill(0.5)), 0.25, 1e-9);
  });

  it('reaches 1 − 1/e of it after one time constant', () => {
    const weigh = createTimeWeighting('slow', rate);
    expectClose(weigh(new Float64Array(rate).fill(1)), 1 - 1 / Math.E, 1e-9);
  });

  it('gives the same in pieces as in one', () => {
    const sound = Float64Array.from({ length: 1000 }, (_, n) => Math.sin(n));
    const whole = createTimeWeighting('fast', rate)(sound);
    const weigh = createTimeWeighting('fast', rate);
    weigh(sound.subarray(0, 333));
    expectClose(weigh(sound.subarray(333)), whole, 1e-15);
  });

  it('hears silence where a sample is no number', () => {
    const weigh = createTimeWeighting('fast', rate);
    weigh([1, Number.NaN, -Infinity]);
    expect(weigh([])).toBeGreaterThan(0);
    expect(weigh([])).toBeLessThan(1);
  });

  it('refuses a rate that is none', () => {
    expect(() => createTimeWeighting('fast', 0)).toThrow(RangeError);
  });
});
