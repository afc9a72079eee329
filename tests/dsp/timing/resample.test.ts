import { describe, expect, it } from 'vitest';
import type { Clock } from '../../../dsp/timing/clock';
import { readBetween, resampleToStimulus } from '../../../dsp/timing/resample';
import { expectClose } from '../../close';

/** A clock as it would be found; the sounds below are closed forms, sampled with it. */
function clockOf(captureRate: number, skewPpm: number, captureAt: number): Clock {
  const ratio = (captureRate / 48_000) * (1 + skewPpm * 1e-6);
  return {
    captureRate,
    stimulusRate: 48_000,
    ratio,
    skewPpm,
    skewInterval: [skewPpm, skewPpm],
    skewKnown: true,
    steps: [],
    segments: [{ stimulusAt: 1000, captureAt, standing: 'marked', deviation: 0, lostSamples: 0 }],
  };
}

function sampled(sound: (seconds: number) => number, clock: Clock, length: number): Float64Array {
  const segment = clock.segments[0];
  if (!segment) throw new Error('no segment');
  return Float64Array.from({ length }, (_, n) => {
    const stimulus = segment.stimulusAt + (n - segment.captureAt) / clock.ratio;
    return sound(stimulus / 48_000);
  });
}

/** Rms of the difference over the rms of a full sine, dB. */
function errorDb(actual: Float64Array, sound: (seconds: number) => number, start: number): number {
  let sum = 0;
  for (const [n, value] of actual.entries()) sum += (value - sound((start + n) / 48_000)) ** 2;
  return 10 * Math.log10(sum / actual.length / 0.5);
}

const rates = [44_100, 48_000, 88_200, 96_000, 176_400, 192_000];

describe('resampleToStimulus', () => {
  it.each(rates.flatMap((rate) => [97, 1000, 7919, 15_000, 20_000].map((hz) => [rate, hz])))(
    'reads a capture at %i Hz of a sine of %i Hz with an error below −100 dB',
    (rate, hz) => {
      const sine = (seconds: number) => Math.sin(2 * Math.PI * hz * seconds + 0.3);
      const clock = clockOf(rate, 123.4, 777.31);
      const capture = sampled(sine, clock, Math.round(rate / 4));
      const stimulus = resampleToStimulus(capture, clock, 0, 2000, 6000);
      expect(errorDb(stimulus, sine, 2000)).toBeLessThan(-100);
    },
  );

  it.each(rates)('reads a capture at %i Hz of a chirp with an error below −100 dB', (rate) => {
    const chirp = (seconds: number) => {
      const inside = seconds - 0.02;
      return Math.sin(2 * Math.PI * (20 + (0.5 * 19_000 * inside) / 0.25) * inside);
    };
    const clock = clockOf(rate, -300, 300.77);
    const capture = sampled(chirp, clock, Math.round(rate * 0.3));
    const stimulus = resampleToStimulus(capture, clock, 0, 2000, 9000);
    expect(errorDb(stimulus, chirp, 2000)).toBeLessThan(-100);
  });

  it('keeps what lies above half the lower rate out', () => {
    const clock = clockOf(96_000, 10, 500);
    const high = sampled((s) => Math.sin(2 * Math.PI * 30_000 * s), clock, 30_000);
    const stimulus = resampleToStimulus(high, clock, 0, 2000, 5000);
    expect(errorDb(stimulus, () => 0, 2000)).toBeLessThan(-100);
  });

  it('gives zeros outside the capture and for what is not a number', () => {
    const clock = clockOf(48_000, 0, 1000);
    expect(resampleToStimulus(new Float64Array(50).fill(1), clock, 0, -500, 100)).toEqual(
      new Float64Array(100),
    );
    const broken = new Float64Array(500).fill(NaN);
    expect(resampleToStimulus(broken, clock, 0, 100, 100)).toEqual(new Float64Array(100));
  });

  it('copies when nothing is to be moved', () => {
    const signal = Float64Array.from({ length: 300 }, (_, n) => Math.sin(n * n * 0.001));
    expectClose(readBetween(signal, 100, 1, 100), signal.slice(100, 200), 1e-12);
  });

  it('refuses what makes no sense', () => {
    const clock = clockOf(48_000, 0, 1000);
    const capture = new Float64Array(10);
    expect(() => resampleToStimulus(capture, clock, 1, 0, 5)).toThrow(/0 … 0, got 1/);
    expect(() => resampleToStimulus(capture, clock, 0, 0, 5.5)).toThrow(RangeError);
    expect(() => resampleToStimulus(capture, clock, 0, NaN, 5)).toThrow(RangeError);
    expect(() => readBetween(capture, 0, 0, 5)).toThrow(RangeError);
  });
});
