import { describe, expect, it } from 'vitest';
import {
  averageByDb,
  averageByPower,
  averageGroup,
  spreadOf,
} from '../../../dsp/response/average-curves';
import { differenceCurve, levelCurve, type PowerCurve } from '../../../dsp/response/curve';
import { expectClose } from '../../close';

const hz = [100, 200, 400, 800];
const curve = (power: number[], noisePower: number[] | null = null): PowerCurve => ({
  hz,
  power,
  noisePower,
});
const flat = (power: number): number[] => new Array<number>(hz.length).fill(power);

describe('levelCurve', () => {
  it('takes the power of the noise off, and is null where it is half or more', () => {
    const { db } = levelCurve(curve([11, 3, 2, 1], [1, 1, 1, 1]));
    expectClose(db, [10, 10 * Math.log10(2), null, null], 1e-12);
  });

  it('is null where there is no power at all, and needs no noise', () => {
    expect(levelCurve(curve([1, 0, 10, 100])).db).toEqual([0, null, 10, 20]);
  });

  it('refuses powers and frequencies that are none', () => {
    expect(() => levelCurve(curve([1, 1, 1]))).toThrow(RangeError);
    expect(() => levelCurve(curve([1, -1, 1, 1]))).toThrow(RangeError);
    expect(() => levelCurve(curve([1, NaN, 1, 1]))).toThrow(RangeError);
    expect(() => levelCurve(curve(flat(1), [0, NaN, 0, 0]))).toThrow(RangeError);
    expect(() => levelCurve({ ...curve(flat(1)), hz: [1, 2, 2, 3] })).toThrow(RangeError);
  });
});

describe('averages', () => {
  it('mean powers without the noise', () => {
    const mean = averageByPower([curve(flat(5), flat(1)), curve(flat(17), flat(1))]);
    expectClose(mean.db, flat(10), 1e-12);
  });

  it('are null where the noise is half of the mean', () => {
    const mean = averageByPower([curve(flat(2), [0, 1, 2, 2]), curve(flat(2), [0, 0, 1, 2])]);
    expectClose(mean.db, [10 * Math.log10(2), 10 * Math.log10(1.5), null, null], 1e-12);
  });

  it('mean decibels, null where one seat cannot tell', () => {
    const mean = averageByDb([
      { hz, db: [0, -20, 3, null] },
      { hz, db: [6, 0, 3, 1] },
    ]);
    expect(mean.db).toEqual([3, -10, 3, null]);
  });

  it('let loud and quiet members of a group count alike', () => {
    const shaped = [4, 1, 1, 2];
    const group = averageGroup(
      [curve(shaped), curve(shaped.map((one) => 1000 * one)), curve(flat(7))],
      [200, 400],
    );
    const expected = [3, 1, 1, 5 / 3].map((one) => 10 * Math.log10(one));
    expectClose(group.db, expected, 1e-9);
  });

  it('take the noise out of the reference band too', () => {
    const group = averageGroup([curve(flat(3), flat(1)), curve([40, 20, 20, 20])], [200, 400]);
    expectClose(group.db, [10 * Math.log10(1.5), 0, 0, 0], 1e-9);
  });

  it('refuse nothing, other frequencies, and a reference band in the noise', () => {
    expect(() => averageByPower([])).toThrow(RangeError);
    expect(() => averageByDb([])).toThrow(RangeError);
    const other = { hz: [100, 200, 400, 801], db: flat(0) };
    expect(() => averageByDb([{ hz, db: flat(0) }, other])).toThrow(RangeError);
    expect(() => averageGroup([curve(flat(1), flat(1))], [200, 400])).toThrow(/no power/);
    expect(() => averageGroup([curve(flat(1))], [1000, 4000])).toThrow(/no power/);
  });
});

describe('spreadOf', () => {
  it('gives the lowest, the highest and the standard deviation over the seats', () => {
    const spread = spreadOf([
      { hz, db: [1, 0, 5, null] },
      { hz, db: [2, 0, 5, 1] },
      { hz, db: [3, 6, 5, 1] },
    ]);
    expect(spread.lowest).toEqual([1, 0, 5, null]);
    expect(spread.highest).toEqual([3, 6, 5, null]);
    // Of 0, 0, 6 the squares add up to 24, over n − 1 = 2.
    expectClose(spread.deviation, [1, Math.sqrt(12), 0, null], 1e-12);
  });

  it('tells no deviation of a single seat', () => {
    const spread = spreadOf([{ hz, db: [1, 2, 3, 4] }]);
    expect(spread.deviation).toEqual([null, null, null, null]);
    expect(spread.highest).toEqual([1, 2, 3, 4]);
  });
});

describe('differenceCurve', () => {
  it('is null where either is in its noise', () => {
    const difference = differenceCurve({ hz, db: [3, null, 1, -2] }, { hz, db: [1, 1, null, 2] });
    expect(difference.db).toEqual([2, null, null, -4]);
  });

  it('refuses curves of other frequencies', () => {
    const short = { hz: [100], db: [0] };
    expect(() => differenceCurve({ hz, db: flat(0) }, short)).toThrow(RangeError);
  });
});
