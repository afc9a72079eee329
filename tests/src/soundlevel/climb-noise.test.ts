import { describe, expect, it } from 'vitest';
import { sweepSignal, synchronisedSweep } from '../../../dsp/signal/sweep';
import { climbNoise } from '../../../src/soundlevel/climb-noise';
import { expectClose } from '../../close';

function rmsDb(samples: ArrayLike<number>): number {
  let energy = 0;
  for (let n = 0; n < samples.length; n++) energy += (samples[n] ?? 0) ** 2;
  return 10 * Math.log10(energy / samples.length);
}

describe('climbNoise', () => {
  it.each([
    [false, 44_100],
    [false, 48_000],
    [true, 48_000],
    [false, 192_000],
  ])('is as loud as a sweep with peaks at −12 dB (sub: %s, %d Hz)', (isSub, sampleRate) => {
    const sweep = sweepSignal(synchronisedSweep(10, 20_000, 2 ** 17, 48_000));
    const { period } = climbNoise(isSub, sampleRate);
    expectClose(rmsDb(period), rmsDb(sweep) - 12, 0.1, 'fades take a little off the sweep');
  });

  it('stays within full scale, with room for the converter', () => {
    for (const isSub of [false, true]) {
      const { period } = climbNoise(isSub, 48_000);
      const peak = Math.max(...period.map(Math.abs));
      expect(peak).toBeLessThan(0.8);
    }
  });

  it('tells the power of its bins', () => {
    const { period, power } = climbNoise(false, 48_000);
    expectClose(10 * Math.log10(power.reduce((sum, p) => sum + p, 0)), rmsDb(period), 1e-4);
  });
});
