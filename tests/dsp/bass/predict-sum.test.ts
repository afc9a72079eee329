import { describe, expect, it } from 'vitest';
import { predictSum } from '../../../dsp/bass/predict-sum';
import type { FilterSpec } from '../../../dsp/filter/analogue';
import { expectClose } from '../../close';
import { directSound, hz } from './seat-responses';

const filter = (kind: FilterSpec['kind'], order = 4): FilterSpec => ({
  family: 'linkwitz-riley',
  kind,
  order,
  cutoffHz: 80,
});
const high = { filters: [filter('high-pass')] };
const low = { filters: [filter('low-pass')] };
const plain = { filters: [] };
const here = directSound([0.01, 0.012]);

describe('predictSum', () => {
  it('of a Linkwitz-Riley-4 pair with equal delays is flat and loses nothing', () => {
    const sum = predictSum(here, here, { hz, crossoverHz: 80, main: high, sub: low });
    for (const seat of sum.seats) {
      expectClose(
        seat.sumDb,
        hz.map(() => 0),
        1e-9,
      );
      expectClose([seat.lostDb, seat.dip.db], [0, 0], 1e-9);
    }
    expectClose([sum.lostDb, sum.dip.db], [0, 0], 1e-9);
  });

  it('of the same pair with the sub inverted falls into a hole at the crossover', () => {
    const sub = { ...low, inverted: true };
    const sum = predictSum(here, here, { hz, crossoverHz: 80, main: high, sub });
    expect(sum.dip.db).toBeLessThan(-20);
    expectClose(sum.dip.hz, 80, 80 / 48);
  });

  it('of two equal sides loses the mean of cos²(πfτ) over log f', () => {
    const delaySeconds = 0.004;
    const sub = { ...plain, delaySeconds };
    const sum = predictSum(here, here, { hz, crossoverHz: 60, main: plain, sub });
    // From 60/√2 to 60·√2 Hz by the midpoint rule.
    const steps = 20_000;
    let mean = 0;
    for (let n = 0; n < steps; n++) {
      const f = 60 * 2 ** ((n + 0.5) / steps - 0.5);
      mean += Math.cos(Math.PI * f * delaySeconds) ** 2 / steps;
    }
    expectClose(sum.lostDb, -10 * Math.log10(mean), 0.02, 'the band ends between frequencies');
  });

  it('shows each side through its own path', () => {
    const main = { filters: [], gainDb: -3 };
    const sub = { filters: [], gainDb: 2, inverted: true };
    const [seat] = predictSum(here, here, { hz, crossoverHz: 80, main, sub }).seats;
    expectClose(
      seat?.mainDb,
      hz.map(() => -3),
      1e-9,
    );
    expectClose(
      seat?.subDb,
      hz.map(() => 2),
      1e-9,
    );
    const difference = 10 ** (2 / 20) - 10 ** (-3 / 20);
    expectClose(
      seat?.sumDb,
      hz.map(() => 20 * Math.log10(difference)),
      1e-9,
    );
  });

  it('finds the dip of the seats together, not of the worst seat', () => {
    // At the second seat the sub comes half a period of 80 Hz later.
    const sub = directSound([0.01, 0.012 + 1 / 160]);
    const sum = predictSum(here, sub, { hz, crossoverHz: 80, main: plain, sub: plain });
    expect(sum.seats[1]?.dip.db).toBeLessThan(-20);
    // Half the power is left when one of two equal seats is silent.
    expectClose(sum.dip.db, -3, 0.3, 'about the middle of 1/6 octave');
  });

  it('refuses seats that do not match, other grids and what is no number', () => {
    const settings = { hz, crossoverHz: 80, main: high, sub: low };
    expect(() => predictSum(here, here.slice(1), settings)).toThrow(RangeError);
    expect(() => predictSum([], [], settings)).toThrow(RangeError);
    const short = { re: new Float64Array(3), im: new Float64Array(3) };
    expect(() => predictSum([short], here.slice(1), settings)).toThrow(RangeError);
    const bad = { re: hz.map(() => NaN), im: hz };
    expect(() => predictSum([bad], here.slice(1), settings)).toThrow(RangeError);
    const late = { ...low, delaySeconds: NaN };
    expect(() => predictSum(here, here, { ...settings, sub: late })).toThrow(RangeError);
    expect(() => predictSum(here, here, { ...settings, crossoverHz: 0 })).toThrow(RangeError);
  });
});
