import { describe, expect, it } from 'vitest';
import type { PowerSpectrum } from '../../../dsp/response/power-spectrum';
import { powerSpectrum } from '../../../dsp/response/power-spectrum';
import { logGrid, smoothPower } from '../../../dsp/response/smoothing';
import { expectClose } from '../../close';

const spectrumOf = (power: (hz: number) => number): PowerSpectrum => ({
  hzPerBin: 0.5,
  power: Float64Array.from({ length: 40_001 }, (_, k) => power(k / 2)),
});

describe('powerSpectrum', () => {
  it('is flat for one sample and lies on a grid at least as fine as asked', () => {
    const ir = { samples: Float64Array.of(0, 0.5, 0), sampleRate: 48_000, zeroIndex: 1 };
    const { hzPerBin, power } = powerSpectrum(ir, 3);
    expect(hzPerBin).toBeLessThanOrEqual(3);
    expectClose((power.length - 1) * hzPerBin, 24_000, 1e-9);
    expectClose(power, new Float64Array(power.length).fill(0.25), 1e-15);
  });

  it('refuses a spacing that is not positive', () => {
    const ir = { samples: Float64Array.of(1), sampleRate: 48_000, zeroIndex: 0 };
    expect(() => powerSpectrum(ir, 0)).toThrow(RangeError);
  });
});

describe('logGrid', () => {
  it('steps by equal ratios and reaches the upper end', () => {
    expectClose([...logGrid(20, 160, 1)], [20, 40, 80, 160], 1e-9);
    expect(logGrid(20, 20_000, 24)).toHaveLength(240);
  });

  it.each([
    [0, 100, 3],
    [100, 50, 3],
    [20, 200, 0],
    [20, Infinity, 3],
  ])('refuses %d to %d Hz with %d to the octave', (low, high, perOctave) => {
    expect(() => logGrid(low, high, perOctave)).toThrow(RangeError);
  });
});

describe('smoothPower', () => {
  it('leaves a flat response flat up to the last band', () => {
    const read = smoothPower(
      spectrumOf(() => 3),
      logGrid(20, 19_900, 24),
      24,
    );
    expectClose(read, new Float64Array(read.length).fill(3), 1e-9);
  });

  it('is the mean power between the band edges', () => {
    // ∫f df/Δf = (f1 + f2)/2, for P = f.
    const read = smoothPower(
      spectrumOf((hz) => hz),
      [100, 1000],
      3,
    );
    const half = 2 ** (1 / 6);
    const expected = [100, 1000].map((hz) => (hz * half + hz / half) / 2);
    expectClose([...read], expected, 0.02, 'bins stand for steps of 0.5 Hz');
  });

  it('spreads a single line over the band it lies in and nowhere else', () => {
    const line = spectrumOf((hz) => (hz === 1000 ? 1 : 0));
    const [below, inside, above] = smoothPower(line, [800, 1000, 1250], 3);
    expectClose([below, above], [0, 0], 1e-12);
    expectClose(inside, 0.5 / (1000 * (2 ** (1 / 6) - 2 ** (-1 / 6))), 1e-12);
  });

  it('reads the bin itself where the band is narrower than a bin', () => {
    const read = smoothPower(
      spectrumOf((hz) => hz * hz),
      [3.02],
      48,
    );
    expectClose([...read], [9], 1e-9);
  });

  it.each([0, -1, 23_000, NaN])('refuses %d Hz', (hz) => {
    expect(() =>
      smoothPower(
        spectrumOf(() => 1),
        [hz],
        3,
      ),
    ).toThrow(RangeError);
  });

  it('refuses a fraction of 0', () => {
    expect(() =>
      smoothPower(
        spectrumOf(() => 1),
        [100],
        0,
      ),
    ).toThrow(RangeError);
  });
});
