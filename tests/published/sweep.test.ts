// Farina, "Simultaneous measurement of impulse response and distortion with a swept-sine
// technique", AES 108 (2000): x(t) = sin(2π f1 L (e^(t/L) − 1)), L = T/ln(f2/f1); harmonic k leads
// by L·ln k. Novak, Lotton and Simon, JAES 63 (2015): L·f1 whole. Numbers computed from those
// formulas in double precision outside this project.
import { describe, expect, it } from 'vitest';
import { sweepRateSeconds, sweepTimeSeconds, type SweepSpec } from '../../dsp/signal/sweep';
import { expectClose } from '../close';

const sweep = (seconds: number): SweepSpec => ({
  startHz: 20,
  endHz: 20_000,
  lengthSamples: seconds * 48_000,
  sampleRate: 48_000,
  fadeInSamples: 0,
  fadeOutSamples: 0,
});

describe('an exponential sweep of 5 s from 20 Hz to 20 kHz', () => {
  it('rises by e in L = 0.723824 s', () => {
    expectClose(sweepRateSeconds(sweep(5)), 0.7238241365054198, 1e-12);
  });

  it.each([
    [20, 0],
    [79.6214, 1],
    [632.4555, 2.5],
    [20_000, 5],
  ])('passes %d Hz at %d s', (hz, seconds) => {
    expectClose(sweepTimeSeconds(sweep(5), hz), seconds, 1e-6);
  });

  it.each([
    [2, 0.501717],
    [3, 0.795202],
    [4, 1.003433],
    [5, 1.16495],
  ])('has harmonic %d lead by %d s', (order, lead) => {
    expectClose(sweepRateSeconds(sweep(5)) * Math.log(order), lead, 1e-6);
  });
});

describe('its synchronised form', () => {
  it('of L = 0.7 s lasts 4.835429 s, has L·f1 = 14, and leads by the published times', () => {
    const synchronised = sweep(4.835428695287495);
    const rate = sweepRateSeconds(synchronised);
    expectClose(rate, 0.7, 1e-12);
    expectClose(rate * synchronised.startHz, 14, 1e-9);
    expect(synchronised.startHz).toBe(20);
    const leads = [2, 3, 4, 5].map((order) => rate * Math.log(order));
    expectClose(leads, [0.485203, 0.769029, 0.970406, 1.126607], 1e-6);
  });
});
