import { describe, expect, it } from 'vitest';
import { sectionsResponse } from '../../../dsp/filter/biquad';
import { magnitude } from '../../../dsp/filter/complex';
import { equaliserSection, type EqualiserSpec } from '../../../dsp/filter/equaliser';
import { expectClose } from '../../close';

const rate = 48_000;
const gainDb = (spec: EqualiserSpec, hz: number): number =>
  20 * Math.log10(magnitude(sectionsResponse([equaliserSection(spec, rate)], hz, rate)));

describe('equaliserSection', () => {
  it('peaks by its gain at its frequency and leaves both ends alone', () => {
    for (const gain of [-12, 6]) {
      const spec = { kind: 'peak', hz: 1000, q: 2, gainDb: gain } as const;
      expectClose(
        [0, 1000, 24_000].map((hz) => gainDb(spec, hz)),
        [0, gain, 0],
        1e-9,
      );
    }
  });

  it('shelves by its gain at one end, by half of it at its frequency', () => {
    const low = { kind: 'low-shelf', hz: 200, q: Math.SQRT1_2, gainDb: 8 } as const;
    expectClose(
      [0, 200, 24_000].map((hz) => gainDb(low, hz)),
      [8, 4, 0],
      1e-9,
    );
    const high = { kind: 'high-shelf', hz: 200, q: Math.SQRT1_2, gainDb: 8 } as const;
    expectClose(
      [0, 200, 24_000].map((hz) => gainDb(high, hz)),
      [0, 4, 8],
      1e-9,
    );
  });

  it('has 20 log Q at the corner of low-pass and high-pass', () => {
    for (const kind of ['low-pass', 'high-pass'] as const) {
      expectClose(gainDb({ kind, hz: 500, q: 2 }, 500), 20 * Math.log10(2), 1e-9);
    }
  });

  it('passes only its frequency as a band-pass, all but it as a notch, all as an all-pass', () => {
    expectClose(gainDb({ kind: 'band-pass', hz: 500, q: 2 }, 500), 0, 1e-9);
    expect(gainDb({ kind: 'band-pass', hz: 500, q: 2 }, 20)).toBeLessThan(-30);
    expect(gainDb({ kind: 'notch', hz: 500, q: 2 }, 500)).toBeLessThan(-200);
    for (const hz of [20, 500, 9000]) {
      expectClose(gainDb({ kind: 'all-pass', hz: 500, q: 2 }, hz), 0, 1e-9);
    }
  });

  it.each([
    { kind: 'peak', hz: 0, q: 1 },
    { kind: 'peak', hz: 24_000, q: 1 },
    { kind: 'peak', hz: 100, q: 0 },
    { kind: 'peak', hz: 100, q: 1, gainDb: NaN },
  ] as const)('refuses %o', (spec) => {
    expect(() => equaliserSection(spec, rate)).toThrow(RangeError);
  });
});
