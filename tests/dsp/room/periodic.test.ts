import { describe, expect, it } from 'vitest';
import { foldPeriodic, recordPeriodic } from '../../../dsp/room/periodic';
import { expectClose } from '../../close';

const cycle = (length: number, turns: number): Float64Array =>
  Float64Array.from({ length }, (_, n) => Math.sin((2 * Math.PI * turns * n) / length));

describe('a periodic signal on another clock', () => {
  it('is the same wave at the other rate, wherever it is entered', () => {
    const ratio = 1.0003;
    for (const from of [-777, 0, 123456]) {
      const heard = recordPeriodic(cycle(480, 7), ratio, from, 1000);
      const wave = Float64Array.from({ length: 1000 }, (_, n) =>
        Math.sin((2 * Math.PI * 7 * (from + n)) / ratio / 480),
      );
      expectClose([...heard], [...wave], 1e-4);
    }
  });

  it('repeats a period shorter than the interpolation reaches', () => {
    expectClose([...recordPeriodic(Float64Array.of(1), 1, 5, 10)], Array(10).fill(1), 1e-6);
    expect(() => recordPeriodic(new Float64Array(0), 1, 0, 10)).toThrow(RangeError);
  });

  it('folds what is longer than a period onto it', () => {
    expect([...foldPeriodic(Float64Array.of(1, 2, 3, 4, 5), 2)]).toEqual([9, 6]);
  });
});
