import { describe, expect, it } from 'vitest';
import { noiseDose } from '../../../dsp/level/noise-dose';
import { expectClose } from '../../close';

describe('noiseDose', () => {
  it('is nothing after no time', () => {
    expect(noiseDose(120, 0)).toBe(0);
  });

  it('adds up over parts of the day', () => {
    expectClose(noiseDose(88, 600) + noiseDose(88, 1200), noiseDose(88, 1800), 1e-12);
  });

  it('refuses what is no level or time', () => {
    expect(() => noiseDose(Number.NaN, 1)).toThrow(RangeError);
    expect(() => noiseDose(85, -1)).toThrow(RangeError);
  });
});
