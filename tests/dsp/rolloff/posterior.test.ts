import { describe, it } from 'vitest';
import { MassLine, weightsOf } from '../../../dsp/rolloff/posterior';
import { expectClose } from '../../close';

describe('MassLine', () => {
  it('reads the quantiles of an even mass', () => {
    const line = new MassLine(0, 10, 0.01);
    line.add(5, 4, 3);
    expectClose(
      [0.05, 0.5, 0.95].map((p) => line.quantile(p)),
      [3.2, 5, 6.8],
      0.011,
    );
  });

  it('weighs masses against each other', () => {
    const line = new MassLine(-10, 10, 0.01);
    line.add(-5, 1, 1);
    line.add(5, 1, 3);
    expectClose(line.quantile(0.125), -5, 0.011);
    expectClose(line.quantile(0.625), 5, 0.011);
  });

  it('keeps in its end cells what lies outside', () => {
    const line = new MassLine(0, 1, 0.1);
    line.add(-3, 0.1, 1);
    line.add(7, 0.1, 1);
    expectClose(line.quantile(0.25), 0.05, 0.051);
    expectClose(line.quantile(0.9), 1, 0.11);
  });

  it('starts anew once cleared', () => {
    const line = new MassLine(0, 10, 0.01);
    line.add(2, 1, 5);
    line.clear();
    line.add(8, 1, 1);
    expectClose(line.quantile(0.5), 8, 0.011);
  });
});

describe('weightsOf', () => {
  it('gives weights in the ratio of the exponentials, however low the logs', () => {
    const logs = Float64Array.of(-1e4, -1e4 + Math.log(3), -Infinity);
    expectClose(weightsOf(logs), [0.25, 0.75, 0], 1e-9);
  });
});
