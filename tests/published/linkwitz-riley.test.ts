// Linkwitz, "Active crossover networks for noncoincident drivers", JAES 24 (1976), from memory:
// a fourth-order pair sums to a second-order all-pass of Q 1/√2, each side 6.02 dB down at the
// crossover; a second-order Butterworth pair nulls in phase and peaks by 3.01 dB with one inverted.
import { describe, expect, it } from 'vitest';
import { filterResponse, type FilterSpec } from '../../dsp/filter/analogue';
import { add, divide, magnitude, phase, type Complex } from '../../dsp/filter/complex';
import { expectClose } from '../close';

const response = (family: FilterSpec['family'], order: number, hz: number): [Complex, Complex] => [
  filterResponse({ family, kind: 'low-pass', order, cutoffHz: 80 }, hz),
  filterResponse({ family, kind: 'high-pass', order, cutoffHz: 80 }, hz),
];

describe('a fourth-order Linkwitz-Riley pair at 80 Hz', () => {
  it('is 6.0206 dB down on both sides at the crossover', () => {
    const levels = response('linkwitz-riley', 4, 80).map((h) => 20 * Math.log10(magnitude(h)));
    expectClose(levels, [-6.020599913279624, -6.020599913279624], 1e-9);
  });

  it('sums to the all-pass (s² − √2 s + 1)/(s² + √2 s + 1)', () => {
    for (let hz = 5; hz < 2000; hz *= 1.07) {
      const w = hz / 80;
      const allPass = divide(
        { re: 1 - w * w, im: -Math.SQRT2 * w },
        { re: 1 - w * w, im: Math.SQRT2 * w },
      );
      expectClose({ ...add(...response('linkwitz-riley', 4, hz)) }, { ...allPass }, 1e-12);
    }
  });

  it('keeps both sides in phase everywhere', () => {
    for (let hz = 5; hz < 2000; hz *= 1.07) {
      const [low, high] = response('linkwitz-riley', 4, hz);
      expectClose(Math.cos(phase(low) - phase(high)), 1, 1e-12);
    }
  });

  it('delays the sum by 2√2/ω0 = 5.627 ms at the lowest frequencies', () => {
    const hz = 0.01;
    const sum = add(...response('linkwitz-riley', 4, hz));
    expectClose(-phase(sum) / (2 * Math.PI * hz), 0.005626976975981914, 1e-8);
  });
});

describe('a second-order Butterworth pair at 80 Hz', () => {
  const [low, high] = response('butterworth', 2, 80);

  it('cancels at the crossover when in phase', () => {
    expect(magnitude(add(low, high))).toBeLessThan(1e-12);
  });

  it('is 3.0103 dB up at the crossover with one side inverted', () => {
    const level = 20 * Math.log10(magnitude(add(low, { re: -high.re, im: -high.im })));
    expectClose(level, 3.0102999566398116, 1e-9);
  });
});
