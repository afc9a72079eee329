import { describe, expect, it } from 'vitest';
import { averagePower } from '../../../dsp/response/averaging';
import { expectClose } from '../../close';

const flat = (power: number, hzPerBin = 10): { hzPerBin: number; power: Float64Array } => ({
  hzPerBin,
  power: new Float64Array(101).fill(power),
});

describe('averagePower', () => {
  it('means powers, not decibels', () => {
    const mean = averagePower([flat(1), flat(3)]);
    expectClose(mean, flat(2), 1e-12);
  });

  it('lets a loud and a quiet response of one shape count alike when given a reference band', () => {
    const shaped = { hzPerBin: 10, power: flat(1).power.map((_, k) => (k > 20 ? 2 : 1)) };
    const louder = { hzPerBin: 10, power: shaped.power.map((p) => 100 * p) };
    const mean = averagePower([shaped, louder], [300, 900]);
    expectClose([mean.power[5], mean.power[50]], [0.5, 1], 1e-12);
  });

  it('refuses nothing at all, grids that differ, and a silent reference band', () => {
    expect(() => averagePower([])).toThrow(RangeError);
    expect(() => averagePower([flat(1), flat(1, 5)])).toThrow(RangeError);
    expect(() => averagePower([flat(0)], [300, 900])).toThrow(RangeError);
  });
});
