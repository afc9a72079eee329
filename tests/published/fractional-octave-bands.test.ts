// IEC 61260-1:2014, 5.2 to 5.5. The standard was not at hand; midpoints as seen in an open
// acoustics library, edges of 1 kHz computed from the formula.
import { describe, expect, it } from 'vitest';
import { octaveBands } from '../../dsp/noise/octave-bands';
import { expectClose } from '../close';

const spectrum = {
  hzPerBin: 0.25,
  power: new Float64Array(100_000),
};

describe('fractional-octave spectra', () => {
  it('stand at the exact octave midpoints', () => {
    const { hz } = octaveBands(spectrum, 1, 15, 16_000);
    expectClose(
      [...hz],
      [
        15.8489, 31.6228, 63.0957, 125.8925, 251.1886, 501.1872, 1000, 1995.2623, 3981.0717,
        7943.2823, 15848.9319,
      ],
      6e-5,
    );
  });

  it('cut the third octave of 1 kHz at 891.2509 and 1122.0185 Hz', () => {
    const at = (hz: number): number => {
      const power = new Float64Array(100_000);
      power[hz * 4] = 1;
      const bands = octaveBands({ hzPerBin: 0.25, power }, 3, 999, 1001);
      return bands.power[0] ?? Number.NaN;
    };
    expect(at(891)).toBe(0);
    // The bin of 891.25 Hz reaches 0.125 Hz to both sides of the edge at 891.2509 Hz.
    expectClose(at(891.25), (891.375 - 891.2509) / 0.25, 1e-3);
    expectClose(at(891.5), 1, 1e-9);
    expectClose(at(1122), (1122.0185 - 1121.875) / 0.25, 1e-3);
    expect(at(1122.25)).toBe(0);
  });
});
