import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  sweepRateSeconds,
  sweepSignal,
  sweepTimeSeconds,
  synchronisedSweep,
} from '../../../dsp/signal/sweep';
import { expectClose } from '../../close';

const spec = synchronisedSweep(10, 20_000, 2 ** 17, 48_000);

/** Frequency near sample n from the spacing of zero crossings; an independent reading of the sweep. */
function crossingFrequency(signal: Float64Array, n: number, sampleRate: number): number {
  const crossings: number[] = [];
  for (let k = n; crossings.length < 3; k++) {
    const a = signal[k] ?? 0;
    const b = signal[k + 1] ?? 0;
    if (a < 0 !== b < 0) crossings.push(k + a / (a - b));
  }
  return sampleRate / ((crossings[2] ?? 0) - (crossings[0] ?? 0));
}

describe('synchronisedSweep', () => {
  it('makes L·f1 whole, keeps the end and the length, and covers the band asked for', () => {
    const frequency = fc.double({ min: 5, max: 60, noNaN: true });
    const length = fc.integer({ min: 2 ** 16, max: 2 ** 19 });
    fc.assert(
      fc.property(frequency, length, (startHz, lengthSamples) => {
        const sweep = synchronisedSweep(startHz, 20_000, lengthSamples, 48_000);
        const turns = sweep.startHz * sweepRateSeconds(sweep);
        expectClose(turns, Math.round(turns), 1e-9);
        expect(sweep.endHz).toBe(20_000);
        expect(sweep.lengthSamples).toBe(lengthSamples);
        if (turns > 1.5) expect(sweep.startHz).toBeLessThanOrEqual(startHz);
      }),
      { numRuns: 200, seed: 1 },
    );
  });

  it('still has one whole turn when the sweep is short', () => {
    const sweep = synchronisedSweep(5, 20_000, 9600, 48_000);
    expectClose(sweep.startHz * sweepRateSeconds(sweep), 1, 1e-9);
    expect(sweep.startHz).toBeGreaterThan(5);
  });

  it.each([
    [0, 20_000, 1000, 48_000],
    [100, 100, 1000, 48_000],
    [100, 24_001, 1000, 48_000],
    [NaN, 20_000, 1000, 48_000],
    [10, 20_000, 10.5, 48_000],
    [10, 20_000, 1, 48_000],
    [10, 20_000, 1000, NaN],
  ])('refuses %d to %d Hz, %d samples at %d', (startHz, endHz, length, rate) => {
    expect(() => synchronisedSweep(startHz, endHz, length, rate)).toThrow(RangeError);
  });
});

describe('sweepSignal', () => {
  const signal = sweepSignal(spec);

  it('starts and ends at silence and peaks at 1', () => {
    expect(signal).toHaveLength(2 ** 17);
    expectClose(signal[0], 0, 1e-9);
    expectClose(signal[signal.length - 1], 0, 1e-3);
    const peak = signal.reduce((most, v) => Math.max(most, Math.abs(v)), 0);
    expect(peak).toBeGreaterThan(0.999);
    expect(peak).toBeLessThanOrEqual(1);
  });

  it('passes each frequency when sweepTimeSeconds says', () => {
    for (const hz of [40, 100, 1000]) {
      const n = Math.round(sweepTimeSeconds(spec, hz) * spec.sampleRate);
      const half = spec.sampleRate / hz / 2;
      const read = crossingFrequency(signal, Math.round(n - half), spec.sampleRate);
      expectClose(read / hz, 1, 0.04, 'the sweep rises by up to 5 % within one period at 40 Hz');
    }
  });

  it('leaves the signal between the fades at full amplitude', () => {
    const middle = signal.subarray(spec.fadeInSamples, signal.length - spec.fadeOutSamples);
    const power = middle.reduce((sum, v) => sum + v * v, 0) / middle.length;
    expectClose(power, 0.5, 0.005, 'whole periods only by chance');
  });

  it('fades in over a quarter of an octave and out over a twelfth', () => {
    const octave = sweepRateSeconds(spec) * Math.LN2 * spec.sampleRate;
    expectClose([spec.fadeInSamples, spec.fadeOutSamples], [octave / 4, octave / 12], 0.5);
  });
});
