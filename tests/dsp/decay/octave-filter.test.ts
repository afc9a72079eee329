import { describe, expect, it } from 'vitest';
import { transformResponse } from '../../../dsp/decay/band-envelope';
import { octaveEnvelope } from '../../../dsp/decay/octave-envelope';
import { octaveResponse, octaveWidthHz } from '../../../dsp/decay/octave-filter';
import { magnitude } from '../../../dsp/filter/complex';
import { bandEdges, bandMidpoints } from '../../../dsp/level/bands';
import { expectClose } from '../../close';

describe('the octave filter', () => {
  it('lets its midpoint through and half the power at its edges', () => {
    for (const midHz of bandMidpoints(31, 16_000, 1)) {
      const [low, high] = bandEdges(midHz, 1);
      const levels = [midHz, low, high].map((hz) => magnitude(octaveResponse(hz, midHz)));
      expectClose(levels, [1, Math.SQRT1_2, Math.SQRT1_2], 1e-12);
    }
  });

  it('is 0.7046 of its midpoint wide', () => {
    expectClose(octaveWidthHz(1000), 10 ** 0.15 * 1000 - 1000 / 10 ** 0.15, 1e-9);
  });

  it('falls by 18 dB an octave far from its edges', () => {
    const fall = (from: number, to: number): number =>
      20 * Math.log10(magnitude(octaveResponse(to, 1000)) / magnitude(octaveResponse(from, 1000)));
    expectClose([fall(64_000, 128_000), fall(20, 10)], [-18.06, -18.06], 0.01);
  });

  it('refuses a frequency that is none', () => {
    expect(() => octaveResponse(0, 1000)).toThrow(RangeError);
    expect(() => octaveResponse(100, -1)).toThrow(RangeError);
  });
});

describe('the power of an octave band along time', () => {
  const samples = new Float64Array(24_000);
  samples[12_000] = 1;
  const click = { samples, sampleRate: 48_000, zeroIndex: 12_000 };
  const transformed = transformResponse(click, 0.2);

  it.each([125, 1000, 8000])('holds the energy the filter lets through at %d Hz', (nominal) => {
    const midHz = bandMidpoints(nominal * 0.9, nominal * 1.1, 1)[0] ?? 0;
    const { power, sampleRate } = octaveEnvelope(transformed, midHz);
    const energy = power.reduce((sum, one) => sum + one, 0) / sampleRate;
    // Half of |2H|² over positive frequencies, ∫|H|² df = B·∫₀^∞ dΩ/(1 + Ω⁶) = B(π/6)/sin(π/6).
    const expected = (2 * octaveWidthHz(midHz) * (Math.PI / 6)) / Math.sin(Math.PI / 6);
    expectClose((energy * 48_000 ** 2) / expected, 1, 0.005, 'the highest band is cut at 24 kHz');
  });

  it.each([125, 1000, 8000])(
    'comes before the sound, and nothing after it, at %d Hz',
    (nominal) => {
      const midHz = bandMidpoints(nominal * 0.9, nominal * 1.1, 1)[0] ?? 0;
      const { power, sampleRate, zeroIndex } = octaveEnvelope(transformed, midHz);
      const all = power.reduce((sum, one) => sum + one, 0);
      const cycle = sampleRate / midHz;
      const after = power.subarray(Math.ceil(zeroIndex + cycle)).reduce((sum, one) => sum + one, 0);
      const before = power.subarray(
        0,
        Math.floor(zeroIndex - 3 * (sampleRate / octaveWidthHz(midHz))),
      );
      expect(after / all).toBeLessThan(1e-4);
      expect(before.reduce((sum, one) => sum + one, 0) / all).toBeLessThan(1e-3);
    },
  );
});
