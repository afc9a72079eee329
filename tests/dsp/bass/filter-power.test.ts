import { describe, expect, it } from 'vitest';
import { filterPower } from '../../../dsp/bass/filter-power';
import { filterResponse, type FilterSpec } from '../../../dsp/filter/analogue';
import { magnitude } from '../../../dsp/filter/complex';
import { expectClose } from '../../close';

describe('filterPower', () => {
  it('is the power of the sections in series', () => {
    for (const family of ['butterworth', 'linkwitz-riley'] as const) {
      for (const kind of ['low-pass', 'high-pass'] as const) {
        for (const order of family === 'butterworth' ? [1, 2, 3, 4] : [2, 4, 8]) {
          const spec: FilterSpec = { family, kind, order, cutoffHz: 80 };
          for (const hz of [10, 50, 80, 200, 1000]) {
            expectClose(filterPower(spec, hz), magnitude(filterResponse(spec, hz)) ** 2, 1e-12);
          }
        }
      }
    }
  });

  it('is 0 or 1 at 0 Hz', () => {
    const spec = { family: 'butterworth', order: 2, cutoffHz: 80 } as const;
    expect(filterPower({ ...spec, kind: 'high-pass' }, 0)).toBe(0);
    expect(filterPower({ ...spec, kind: 'low-pass' }, 0)).toBe(1);
  });

  it.each([
    [{ order: 0 }],
    [{ order: 2.5 }],
    [{ order: 3, family: 'linkwitz-riley' as const }],
    [{ cutoffHz: 0 }],
    [{ cutoffHz: NaN }],
  ])('refuses %o', (given) => {
    const spec = { family: 'butterworth', kind: 'low-pass', order: 2, cutoffHz: 80 } as const;
    expect(() => filterPower({ ...spec, ...given }, 50)).toThrow(RangeError);
    expect(() => filterPower(spec, -1)).toThrow(RangeError);
  });
});
