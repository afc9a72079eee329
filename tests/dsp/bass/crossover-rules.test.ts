import { describe, expect, it } from 'vitest';
import {
  crossoverF6Hz,
  decider,
  measuredStep,
  practiceStep,
} from '../../../dsp/bass/crossover-rules';
import { expectClose } from '../../close';

describe('crossoverF6Hz', () => {
  it('of a normal distribution of log f6 is its 85 % quantile', () => {
    // Median 50 Hz, standard deviation 0.2 of ln f; quantiles 0.84162, 1.03643 and 1.64485.
    const at = (z: number): number => 50 * Math.exp(0.2 * z);
    expectClose(crossoverF6Hz(at(0.84162), at(1.64485)), at(1.03643), 0.01);
    expect(crossoverF6Hz(60, 60)).toBe(60);
  });

  it.each([
    [60, 50],
    [0, 50],
    [NaN, 50],
    [50, Infinity],
  ])('refuses %d and %d', (low, high) => {
    expect(() => crossoverF6Hz(low, high)).toThrow(RangeError);
  });
});

describe('the rules', () => {
  const speaker = { name: 'left', f3Hz: 52, f6UpperHz: 48, lowest: null };
  const stepsHz = [40, 60, 62, 80];

  it('of practice takes the roll-off plus 10 Hz, the measured one 1.25 times f6', () => {
    expect(practiceStep([speaker], stepsHz)).toBe(62);
    // Exactly 60.
    expect(measuredStep([speaker], stepsHz)).toBe(60);
    expect(measuredStep([{ ...speaker, f6UpperHz: 48.1 }], stepsHz)).toBe(62);
    expect(measuredStep([{ ...speaker, f6UpperHz: 90 }], stepsHz)).toBeNull();
  });

  it('name nobody where nothing is known', () => {
    const unknown = { ...speaker, f3Hz: null, f6UpperHz: null };
    expect(decider([unknown])).toBeNull();
    expect(measuredStep([unknown], stepsHz)).toBeNull();
    expect(practiceStep([unknown], stepsHz)).toBe(80);
  });

  it('name compression where that decides', () => {
    const lowest = { kind: 'told', hz: 70, interval: [65, 75], decidedBy: 'compression' } as const;
    expect(decider([{ ...speaker, lowest }])).toEqual({
      name: 'left',
      by: 'compression',
      neededHz: 70,
    });
  });
});
