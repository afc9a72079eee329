import { describe, expect, it } from 'vitest';
import { distortDrive } from '../../../dsp/room/cone-distortion';
import { expectClose } from '../../close';

const rate = 48_000;
const cone = { hz: 60, second: 0.02, third: 0.05 };

/** Amplitudes of harmonics 1 to 8 of a sine of `hz`, a divisor of 100, once it is steady. */
function harmonics(hz: number, peak: number): number[] {
  const drive = Float64Array.from(
    { length: 2 * rate },
    (_, n) => peak * Math.sin((2 * Math.PI * hz * n) / rate),
  );
  const steady = distortDrive(drive, rate, cone).subarray(rate);
  return Array.from({ length: 8 }, (_, at) => {
    const step = (2 * Math.PI * hz * (at + 1)) / rate;
    let [re, im] = [0, 0];
    for (const [n, value] of steady.entries()) {
      re += value * Math.cos(step * n);
      im += value * Math.sin(step * n);
    }
    return (2 * Math.hypot(re, im)) / rate;
  });
}

describe('the drive of a simulated cone', () => {
  it('has second and third harmonics that grow with level, far below the resonance', () => {
    for (const peak of [1, 0.25]) {
      const [first, second, third, fourth] = harmonics(2, peak);
      expectClose(second, cone.second * peak ** 2, 0.02 * cone.second);
      expectClose(third, cone.third * peak ** 3, 0.02 * cone.third);
      expectClose(first, peak - 3 * cone.third * peak ** 3, 2e-3);
      expectClose(fourth, 0, 1e-9);
    }
  });

  it('has none far above it, so that nothing folds back', () => {
    const high = harmonics(7000, 1);
    expectClose(high[0], 1, 1e-9);
    for (const one of high.slice(1, 5)) expectClose(one, 0, 1e-7);
    const [, second = 1, third = 1] = harmonics(200, 1);
    expect(second).toBeLessThan(cone.second / 100);
    expect(third).toBeLessThan(cone.third / 1000);
  });

  it('refuses a cone whose cubes turn the drive back', () => {
    expect(() => distortDrive([0], rate, { ...cone, third: 0.1 })).toThrow(RangeError);
  });
});
