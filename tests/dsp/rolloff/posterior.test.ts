import { describe, it } from 'vitest';
import { MassLine, weightsOf } from '../../../dsp/rolloff/posterior';
import { expectClose } from '../../close';

describe('MassLine', () => {
  it('reads the quantiles of an even mass', () => {
    const line = new MassLine(0, 10, 0.01);
    line.add(5, 4, 3);
    expectClose(line.quantiles([0.05, 0.5, 0.95]), [3.2, 5, 6.8], 0.011);
  });

  it('weighs masses against each other', () => {
    const line = new MassLine(-10, 10, 0.01);
    line.add(-5, 1, 1);
    line.add(5, 1, 3);
    expectClose(line.quantiles([0.125])[0] ?? NaN, -5, 0.011);
    expectClose(line.quantiles([0.625])[0] ?? NaN, 5, 0.011);
  });

  it('keeps in its end cells what lies outside', () => {
    const line = new MassLine(0, 1, 0.1);
    line.add(-3, 0.1, 1);
    line.add(7, 0.1, 1);
    expectClose(line.quantiles([0.25])[0] ?? NaN, 0.05, 0.051);
    expectClose(line.quantiles([0.9])[0] ?? NaN, 1, 0.11);
  });

  it('starts anew once cleared', () => {
    const line = new MassLine(0, 10, 0.01);
    line.add(2, 1, 5);
    line.clear();
    line.add(8, 1, 1);
    expectClose(line.quantiles([0.5])[0] ?? NaN, 8, 0.011);
  });

  it('adds points of a table as it adds masses of one cell', () => {
    const [one, other] = [new MassLine(0, 10, 0.5), new MassLine(0, 10, 0.5)];
    const table = Float64Array.of(1.2, 4.3, 7.7, -3, 12);
    const masses = Float64Array.of(0.1, 0.2, 0.3, 0.4);
    one.addPoints(table, Int32Array.of(0, 1, 2, 3), 1, masses);
    for (const [m, at] of [4.25, 7.75, 0.25, 10.25].entries()) other.add(at, 0.5, masses[m] ?? 0);
    const shares = [0.05, 0.2, 0.45, 0.7, 0.99];
    expectClose(one.quantiles(shares), other.quantiles(shares), 1e-9);
  });
});

describe('weightsOf', () => {
  it('gives weights in the ratio of the exponentials, however low the logs', () => {
    const logs = Float64Array.of(-1e4, -1e4 + Math.log(3), -Infinity);
    expectClose(weightsOf(logs), [0.25, 0.75, 0], 1e-9);
  });
});
