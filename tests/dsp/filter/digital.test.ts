import { describe, expect, it } from 'vitest';
import { realSpectrum } from '../../../dsp/fft/fft';
import { filterResponse, type FilterSpec } from '../../../dsp/filter/analogue';
import { filterSamples, sectionsResponse } from '../../../dsp/filter/biquad';
import { digitalSections } from '../../../dsp/filter/digital';
import { expectClose } from '../../close';

const rate = 48_000;
const filters: FilterSpec[] = (['low-pass', 'high-pass'] as const).flatMap((kind) => [
  { family: 'butterworth', kind, order: 1, cutoffHz: 80 },
  { family: 'butterworth', kind, order: 2, cutoffHz: 80 },
  { family: 'butterworth', kind, order: 5, cutoffHz: 3000 },
  { family: 'linkwitz-riley', kind, order: 2, cutoffHz: 80 },
  { family: 'linkwitz-riley', kind, order: 4, cutoffHz: 12_000 },
]);

describe('digitalSections', () => {
  it.each(filters)('$family $kind $order at $cutoffHz Hz is the analogue one, warped', (filter) => {
    const sections = digitalSections(filter, rate);
    const warp = (hz: number): number => Math.tan((Math.PI * hz) / rate);
    for (const hz of [0, 10, 80, 500, 3000, 12_000, 20_000]) {
      const analogue = (filter.cutoffHz * warp(hz)) / warp(filter.cutoffHz);
      const read = sectionsResponse(sections, hz, rate);
      expectClose({ ...read }, { ...filterResponse(filter, analogue) }, 1e-9);
    }
  });

  it('refuses a cutoff at or above half the sample rate', () => {
    const filter = { ...filters[0], cutoffHz: 24_000 } as FilterSpec;
    expect(() => digitalSections(filter, rate)).toThrow(RangeError);
  });
});

describe('filterSamples', () => {
  it('has the response that sectionsResponse says', () => {
    const filter: FilterSpec = {
      family: 'linkwitz-riley',
      kind: 'low-pass',
      order: 4,
      cutoffHz: 2000,
    };
    const sections = digitalSections(filter, rate);
    const impulse = new Float64Array(1024);
    impulse[0] = 1;
    const spectrum = realSpectrum(filterSamples(impulse, sections), 1024);
    for (let k = 0; k <= 512; k += 16) {
      const { re, im } = sectionsResponse(sections, (k * rate) / 1024, rate);
      expectClose([spectrum[2 * k], spectrum[2 * k + 1]], [re, im], 1e-9);
    }
  });

  it('leaves its input alone and passes it through no sections', () => {
    const input = Float64Array.of(1, 2, 3);
    expect(filterSamples(input, [])).toEqual(input);
    filterSamples(input, digitalSections(filters[0] as FilterSpec, rate));
    expect([...input]).toEqual([1, 2, 3]);
  });
});

describe('sectionsResponse', () => {
  it.each([-1, 24_001, NaN])('refuses %d Hz', (hz) => {
    expect(() => sectionsResponse([], hz, rate)).toThrow(RangeError);
  });
});
