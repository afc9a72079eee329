import { describe, expect, it } from 'vitest';
import { octaveBands } from '../../../dsp/noise/octave-bands';
import { expectClose } from '../../close';

const hzPerBin = 0.5;
/** A mean square of 1/k in bin k, pink. */
const pink = {
  hzPerBin,
  power: Float64Array.from({ length: 50_001 }, (_, k) => (k === 0 ? 0 : 1 / k)),
};

describe('octaveBands', () => {
  it.each([1, 3, 6, 12, 24])('reads pink noise as flat in 1/%d octaves', (fraction) => {
    const { power } = octaveBands(pink, fraction, 40, 15_000);
    const expected = Math.log(10 ** 0.3) / fraction;
    expect(power.length).toBeGreaterThan(7 * fraction);
    for (const one of power) expectClose(10 * Math.log10(one / expected), 0, 0.02);
  });

  it('puts a tone in the band it lies in and no other', () => {
    const power = new Float64Array(50_001);
    power[2000] = 0.5;
    const bands = octaveBands({ hzPerBin, power }, 3, 100, 10_000);
    for (const [n, hz] of bands.hz.entries()) {
      expectClose(bands.power[n], Math.abs(hz - 1000) < 1 ? 0.5 : 0, 1e-12);
    }
  });

  it('shares a bin between the two bands it reaches into', () => {
    const power = new Float64Array(100);
    // Bin 1 of 1000 Hz reaches from 500 to 1500 Hz: octaves 1000 (707.9 to 1412.5) and two beside.
    power[1] = 1;
    const bands = octaveBands({ hzPerBin: 1000, power }, 1, 500, 2000);
    expectClose([...bands.power], [0.2079, 0.7046, 0.0875], 2e-4);
  });

  it('refuses a fraction that is none', () => {
    expect(() => octaveBands(pink, 0, 40, 1000)).toThrow(RangeError);
    expect(() => octaveBands(pink, 1.5, 40, 1000)).toThrow(RangeError);
    expect(() => octaveBands(pink, 3, 0, 1000)).toThrow(RangeError);
  });
});
