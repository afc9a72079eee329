import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chooseLowCut, chooseSubLowPass } from '../../../dsp/bass/sub-filters';
import { expectClose } from '../../close';

const steep = { family: 'linkwitz-riley', order: 4 } as const;
const soft = { family: 'butterworth', order: 2 } as const;
const stepsHz = [80, 100, 120, 150, 200];

const lowPass = (given: Partial<Parameters<typeof chooseSubLowPass>[0]>) =>
  chooseSubLowPass({
    crossoversHz: [60, 80],
    bedCrossoversHz: [60, 80],
    stepsHz,
    canBeOff: false,
    shape: steep,
    ...given,
  });

describe('chooseSubLowPass', () => {
  it('is off where it can be', () => {
    expect(lowPass({ canBeOff: true })).toEqual({ hz: null, costDb: 0, belowBed: false });
    expect(lowPass({ stepsHz: [] }).hz).toBeNull();
  });

  it('is the lowest step that takes half a decibel at the highest crossover', () => {
    // 20 log(1 + (80/150)⁴) = 0.68 dB and 20 log(1 + (80/200)⁴) = 0.22 dB.
    const found = lowPass({});
    expect(found.hz).toBe(200);
    expectClose(found.costDb, 20 * Math.log10(1 + 0.4 ** 4), 1e-9);
    // 20 log(1 + (60/150)⁴) = 0.22 dB.
    expect(lowPass({ crossoversHz: [60], bedCrossoversHz: [60] }).hz).toBe(150);
  });

  it('does not cut the band of LFE', () => {
    expect(lowPass({ crossoversHz: [40], bedCrossoversHz: [40] }).hz).toBe(120);
  });

  it('says when even the highest step lies below the bed', () => {
    const found = lowPass({ crossoversHz: [250], bedCrossoversHz: [250] });
    expect(found).toMatchObject({ hz: 200, belowBed: true });
    expect(found.costDb).toBeGreaterThan(6);
  });

  it('never lies below the highest crossover of the bed when a step does not', () => {
    const steps = fc.uniqueArray(fc.integer({ min: 20, max: 300 }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(steps, steps, (some, bedCrossoversHz) => {
        const sorted = some.toSorted((a, b) => a - b);
        const found = lowPass({ stepsHz: sorted, bedCrossoversHz, crossoversHz: bedCrossoversHz });
        const bed = Math.max(...bedCrossoversHz);
        expect(found.belowBed).toBe((sorted.at(-1) ?? 0) < bed);
        expect((found.hz ?? Infinity) >= bed).toBe(!found.belowBed);
      }),
      { seed: 3 },
    );
  });

  it('refuses steps that do not rise', () => {
    expect(() => lowPass({ stepsHz: [100, 80] })).toThrow(RangeError);
    expect(() => lowPass({ stepsHz: [0, 80] })).toThrow(RangeError);
  });
});

const cut = (given: Partial<Parameters<typeof chooseLowCut>[0]>) =>
  chooseLowCut({
    box: 'vented',
    f3Hz: { median: 28, low: 25 },
    stepsHz: [10, 15, 20, 25],
    shape: soft,
    ...given,
  });

describe('chooseLowCut', () => {
  it('is off for a closed box', () => {
    expect(cut({ box: 'closed' })).toEqual({ hz: null, costDb: 0, why: 'closed' });
  });

  it('guards a vented box with the highest step that takes 1 dB at the lower end of f3', () => {
    // 10 log(1 + (15/25)⁴) = 0.53 dB and 10 log(1 + (20/25)⁴) = 1.49 dB.
    const found = cut({});
    expect(found).toMatchObject({ hz: 15, why: 'vented' });
    expectClose(found.costDb, 10 * Math.log10(1 + (15 / 28) ** 4), 1e-9);
  });

  it('takes a box that cannot be told for a vented one', () => {
    expect(cut({ box: 'cannot tell' })).toMatchObject({ hz: 15, why: 'taken as vented' });
  });

  it('is off where every step would cost bass', () => {
    expect(cut({ stepsHz: [20, 30] })).toEqual({ hz: null, costDb: 0, why: 'no step' });
    expect(cut({ stepsHz: [] }).why).toBe('no step');
  });

  it('refuses an interval upside down', () => {
    expect(() => cut({ f3Hz: { median: 20, low: 25 } })).toThrow(RangeError);
    expect(() => cut({ f3Hz: { median: 20, low: 0 } })).toThrow(RangeError);
  });
});
