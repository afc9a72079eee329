import { describe, expect, it } from 'vitest';
import { realSpectrum } from '../../../dsp/fft/fft';
import { periodicPink } from '../../../dsp/signal/pink';
import { expectClose } from '../../close';

const spec = { lowHz: 500, highHz: 2000, periodSamples: 2 ** 14, sampleRate: 48_000, seed: 1 };
const pink = periodicPink(spec);
const spectrum = realSpectrum(pink, spec.periodSamples);
const hzPerBin = spec.sampleRate / spec.periodSamples;
const power = (k: number): number => (spectrum[2 * k] ?? 0) ** 2 + (spectrum[2 * k + 1] ?? 0) ** 2;

describe('periodicPink', () => {
  it('has power 1/f in the band and none outside', () => {
    const first = Math.ceil(500 / hzPerBin);
    const last = Math.floor(2000 / hzPerBin);
    const base = power(first) * first;
    for (let k = 0; k <= spec.periodSamples / 2; k++) {
      const expected = k >= first && k <= last ? 1 : 0;
      expectClose((power(k) * Math.max(k, 1)) / base, expected, 1e-9);
    }
  });

  it('peaks at 1 with a crest factor well below that of random phases', () => {
    const peak = pink.reduce((most, v) => Math.max(most, Math.abs(v)), 0);
    const meanSquare = pink.reduce((sum, v) => sum + v * v, 0) / pink.length;
    expectClose(peak, 1, 1e-12);
    // Some 600 sines of random phase come to about 11 dB.
    expect(-10 * Math.log10(meanSquare)).toBeLessThan(6.5);
  });

  it('repeats for one seed and differs for another', () => {
    expect(periodicPink(spec)).toEqual(pink);
    expect(periodicPink({ ...spec, seed: 2 })).not.toEqual(pink);
  });

  it.each([
    { ...spec, lowHz: 0 },
    { ...spec, lowHz: 1000, highHz: 1000.5 },
    { ...spec, highHz: 24_001 },
    { ...spec, periodSamples: 1000 },
  ])('refuses %o', (wrong) => {
    expect(() => periodicPink(wrong)).toThrow(RangeError);
  });
});
