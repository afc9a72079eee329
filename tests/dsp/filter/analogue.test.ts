import { describe, expect, it } from 'vitest';
import { filterResponse, type FilterSpec } from '../../../dsp/filter/analogue';
import { add, magnitude, phase } from '../../../dsp/filter/complex';
import { expectClose } from '../../close';

const spec = (
  family: FilterSpec['family'],
  kind: FilterSpec['kind'],
  order: number,
): FilterSpec => ({ family, kind, order, cutoffHz: 80 });

const gain = (filter: FilterSpec, hz: number): number => magnitude(filterResponse(filter, hz));

describe('filterResponse', () => {
  it('of a Butterworth is 1/√(1 + w^2n), mirrored for the high-pass', () => {
    for (let order = 1; order <= 16; order++) {
      for (const w of [0.1, 0.5, 1, 1.3, 4]) {
        const expected = 1 / Math.sqrt(1 + w ** (2 * order));
        expectClose(gain(spec('butterworth', 'low-pass', order), 80 * w), expected, 1e-12);
        expectClose(gain(spec('butterworth', 'high-pass', order), 80 / w), expected, 1e-12);
      }
    }
  });

  it('of a Linkwitz-Riley is 1/(1 + w^n)', () => {
    for (const order of [2, 4, 8]) {
      for (const w of [0.1, 1, 3]) {
        const filter = spec('linkwitz-riley', 'low-pass', order);
        expectClose(gain(filter, 80 * w), 1 / (1 + w ** order), 1e-12);
      }
    }
  });

  it('is stable: the phase of a low-pass falls by 90° an order and never jumps up', () => {
    for (let order = 1; order <= 16; order++) {
      const filter = spec('butterworth', 'low-pass', order);
      let turned = 0;
      let last = 0;
      for (let hz = 0.1; hz < 80_000; hz *= 1.01) {
        const now = phase(filterResponse(filter, hz));
        const step = now - last - 2 * Math.PI * Math.round((now - last) / (2 * Math.PI));
        expect(step).toBeLessThan(1e-12);
        turned += step;
        last = now;
      }
      expectClose(turned, (-order * Math.PI) / 2, 0.03, 'the sweep of frequencies has an end');
    }
  });

  it('passes 1 and blocks 0 at the ends', () => {
    expectClose(filterResponse(spec('butterworth', 'low-pass', 3), 0), { re: 1, im: 0 }, 0);
    expect(gain(spec('butterworth', 'high-pass', 3), 0)).toBe(0);
  });

  it('of a Linkwitz-Riley pair sums to 1 in magnitude, with one inverted when order/2 is odd', () => {
    for (const order of [2, 4, 6, 8]) {
      for (let hz = 10; hz < 1000; hz *= 1.1) {
        const low = filterResponse(spec('linkwitz-riley', 'low-pass', order), hz);
        const high = filterResponse(spec('linkwitz-riley', 'high-pass', order), hz);
        const sign = order % 4 === 0 ? 1 : -1;
        const sum = add(low, { re: sign * high.re, im: sign * high.im });
        expectClose(magnitude(sum), 1, 1e-12);
      }
    }
  });

  it.each([
    [spec('butterworth', 'low-pass', 0), 80],
    [spec('butterworth', 'low-pass', 2.5), 80],
    [spec('butterworth', 'low-pass', 17), 80],
    [spec('linkwitz-riley', 'low-pass', 3), 80],
    [{ ...spec('butterworth', 'low-pass', 2), cutoffHz: 0 }, 80],
    [{ ...spec('butterworth', 'low-pass', 2), cutoffHz: NaN }, 80],
    [spec('butterworth', 'low-pass', 2), -1],
    [spec('butterworth', 'low-pass', 2), Infinity],
  ])('refuses %o at %d Hz', (filter, hz) => {
    expect(() => filterResponse(filter, hz)).toThrow(RangeError);
  });
});
