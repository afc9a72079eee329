import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sectionsResponse } from '../../../dsp/filter/biquad';
import { createFrequencyWeighting } from '../../../dsp/level/frequency-weighting';
import { weightingDb } from '../../../dsp/level/weighting';
import { weightingSections } from '../../../dsp/level/weighting-sections';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { expectClose } from '../../close';

/** Largest distance in dB between the filter and the goal, 10 Hz to 20 kHz. */
function largestError(kind: 'A' | 'C' | 'Z', sampleRate: number): number {
  const sections = weightingSections(kind, sampleRate);
  let worst = 0;
  for (let hz = 10; hz <= 20_000; hz *= 1.01) {
    const { re, im } = sectionsResponse(sections, hz, sampleRate);
    const db = 20 * Math.log10(Math.hypot(re, im));
    worst = Math.max(worst, Math.abs(db - weightingDb(kind, hz)));
  }
  return worst;
}

describe('createFrequencyWeighting', () => {
  it.each([
    [44_100, 0.05],
    [48_000, 0.02],
    [88_200, 0.001],
    [96_000, 0.001],
    [176_400, 0.001],
    [192_000, 0.001],
    [384_000, 0.001],
  ])('keeps A and C at %d Hz within %d dB of the goal up to 20 kHz', (rate, tolerance) => {
    expect(largestError('A', rate)).toBeLessThan(tolerance);
    expect(largestError('C', rate)).toBeLessThan(tolerance);
  });

  it('finds a design at every rate between', () => {
    fc.assert(
      fc.property(fc.integer({ min: 44_100, max: 384_000 }), (rate) => {
        expect(largestError('A', rate)).toBeLessThan(0.05);
      }),
      { numRuns: 25, seed: 1 },
    );
  });

  it('leaves Z flat and takes out what is constant', () => {
    expect(largestError('Z', 48_000)).toBeLessThan(0.05);
    const out = createFrequencyWeighting('Z', 48_000)(new Float64Array(480_000).fill(0.5));
    expect(Math.abs(out.at(-1) ?? 1)).toBeLessThan(1e-9);
  });

  it('weights tones it is given sample by sample', () => {
    for (const hz of [31.62, 1000, 12_589]) {
      const tone = Float64Array.from({ length: 96_000 }, (_, n) =>
        Math.sin((2 * Math.PI * hz * n) / 48_000),
      );
      const heard = createFrequencyWeighting('A', 48_000)(tone).subarray(48_000);
      const power = heard.reduce((sum, x) => sum + x * x, 0) / heard.length;
      expectClose(10 * Math.log10(2 * power), weightingDb('A', hz), 0.03, `${hz} Hz`);
    }
  });

  it('gives the same in pieces as in one', () => {
    const normal = gaussian(seededRandom(3));
    const noise = Float64Array.from({ length: 5000 }, normal);
    const whole = createFrequencyWeighting('C', 44_100)(noise);
    const weigh = createFrequencyWeighting('C', 44_100);
    const pieces = [noise.subarray(0, 7), noise.subarray(7, 7), noise.subarray(7)];
    expectClose(
      pieces.flatMap((piece) => [...weigh(piece)]),
      [...whole],
      1e-12,
    );
  });

  it('hears silence where a sample is no number', () => {
    const weigh = createFrequencyWeighting('A', 48_000);
    weigh([0.1, Number.NaN, Infinity, -0.1]);
    expect([...weigh(new Float64Array(1000))].every(Number.isFinite)).toBe(true);
  });

  it('refuses rates that do not reach 20 kHz', () => {
    expect(() => createFrequencyWeighting('A', 32_000)).toThrow(RangeError);
    expect(() => createFrequencyWeighting('A', Number.NaN)).toThrow(RangeError);
  });
});
