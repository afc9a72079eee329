import { describe, expect, it } from 'vitest';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { expectClose } from '../../close';

const draw = (random: () => number, count: number): number[] =>
  Array.from({ length: count }, random);
const mean = (values: number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;

describe('seededRandom', () => {
  it('repeats itself for the same seed and differs for another, however near', () => {
    expect(draw(seededRandom(7), 20)).toEqual(draw(seededRandom(7), 20));
    for (const other of [8, -7, 7.0000001, 0]) {
      expect(draw(seededRandom(7), 20)).not.toEqual(draw(seededRandom(other), 20));
    }
  });

  it('is uniform between 0 and 1 and without memory', () => {
    const values = draw(seededRandom(1), 100_000);
    expect(Math.min(...values.slice(0, 1000))).toBeGreaterThanOrEqual(0);
    expect(values.every((v) => v >= 0 && v < 1)).toBe(true);
    expectClose(mean(values), 0.5, 0.004, 'four standard deviations of the mean of 100 000');
    expectClose(mean(values.map((v) => (v - 0.5) ** 2)), 1 / 12, 0.001);
    const products = values.slice(1).map((v, n) => (v - 0.5) * ((values[n] ?? 0) - 0.5));
    expectClose(mean(products), 0, 4 / 12 / Math.sqrt(100_000), 'four standard deviations');
  });

  it('gives first values without relation between neighbouring seeds', () => {
    const firsts = Array.from({ length: 10_000 }, (_, seed) => seededRandom(seed)());
    expectClose(mean(firsts), 0.5, 0.012, 'four standard deviations of the mean of 10 000');
    const products = firsts.slice(1).map((v, n) => (v - 0.5) * ((firsts[n] ?? 0) - 0.5));
    expectClose(mean(products), 0, 0.0034, 'four standard deviations');
  });

  it('refuses a seed that is no number', () => {
    expect(() => seededRandom(NaN)).toThrow(RangeError);
  });
});

describe('gaussian', () => {
  it('has mean 0, variance 1, fourth moment 3', () => {
    const values = draw(gaussian(seededRandom(3)), 100_000);
    expectClose(mean(values), 0, 0.013, 'four standard deviations');
    expectClose(mean(values.map((v) => v * v)), 1, 0.018, 'four standard deviations');
    expectClose(mean(values.map((v) => v ** 4)), 3, 0.125, 'four standard deviations');
  });

  it('stays finite when the source gives exactly 0', () => {
    expect(
      draw(
        gaussian(() => 0),
        2,
      ).every(Number.isFinite),
    ).toBe(true);
  });
});
