import { describe, expect, it } from 'vitest';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { markSignal } from '../../../dsp/signal/mark';
import { decimationFor } from '../../../dsp/timing/baseband';
import { bandPieces, joinBands, markBand } from '../../../dsp/timing/mark-band';

const sampleRate = 48_000;
const mark = { startHz: 2000, endHz: 12_000, lengthSamples: 1440, fadeSamples: 144, sampleRate };
const places = [3000, 71_680, 143_900, 286_720, 400_122];

/** Marks in noise, some across places where pieces meet. */
function capture(length: number): Float32Array {
  const normal = gaussian(seededRandom(7));
  const samples = Float32Array.from({ length }, () => 0.01 * normal());
  const signal = markSignal(mark);
  for (const place of places) {
    signal.forEach((value, n) => (samples[place + n] = (samples[place + n] ?? 0) + 0.3 * value));
  }
  return samples;
}

describe('the band of a capture made in pieces', () => {
  it.each([
    [48_000, 2],
    [48_000, 3],
    [96_000, 4],
  ])('is that of the whole at %d Hz in %d pieces', (rate, count) => {
    const samples = capture(10 * sampleRate + 12_345);
    const whole = markBand(samples, rate, mark);
    const pieces = bandPieces(samples.length, decimationFor(rate), count);
    expect(pieces).toHaveLength(count);
    const bands = pieces.map(({ from, to }) => markBand(samples.slice(from, to), rate, mark));
    const joined = joinBands(pieces, bands);
    expect(joined.base.samples).toHaveLength(whole.base.samples.length);
    const largest = (values: Float32Array): number =>
      values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    const apart = (a: Float32Array, b: Float32Array): number =>
      largest(a.map((value, n) => value - (b[n] ?? Infinity)));
    expect(apart(joined.base.samples, whole.base.samples)).toBeLessThan(
      1e-6 * largest(whole.base.samples),
    );
    expect(apart(joined.bare, whole.bare)).toBeLessThan(1e-5);
    if (rate === sampleRate) {
      for (const place of places) expect(joined.bare[place / 2] ?? 0).toBeGreaterThan(0.7);
    }
  });

  it('is one piece where the capture is short, and needs at least one', () => {
    expect(bandPieces(1000, 2, 4)).toHaveLength(1);
    expect(() => joinBands([], [])).toThrow(RangeError);
  });
});
