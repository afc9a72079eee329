import { describe, expect, it } from 'vitest';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { captureSample } from '../../../dsp/timing/clock';
import { estimateClock } from '../../../dsp/timing/estimate-clock';
import { findMarks } from '../../../dsp/timing/find-marks';
import { sweepSharpness } from '../../../dsp/timing/sweep-sharpness';
import { expectClose } from '../../close';
import { read, roomsOf } from './read-capture';
import { captureTake, makeTake, truePosition } from './synthetic-take';

const six = makeTake({ channels: 6 });

describe('estimateClock', () => {
  it.each([
    [30, 30],
    [-75, 20],
    [150, 30],
    [300, 10],
    [-300, 10],
  ])('finds a skew of %f ppm at %f dB within 0.2 ppm', (skewPpm, snrDb) => {
    const { clock } = read(six, { skewPpm, snrDb, seed: Math.abs(skewPpm) });
    expectClose(clock.skewPpm, skewPpm, snrDb > 20 ? 0.05 : 0.2);
    expect(clock.skewInterval[0]).toBeLessThan(clock.skewPpm);
    expect(clock.skewInterval[1]).toBeGreaterThan(clock.skewPpm);
    expect(clock.steps).toEqual([]);
    expectClose(clock.ratio, 1 + skewPpm * 1e-6, 2e-7);
  });

  it.each([44_100, 88_200, 96_000, 176_400, 192_000])('reads a capture at %f Hz', (rate) => {
    const take = makeTake({ channels: 3 });
    const options = { rate, skewPpm: 55, snrDb: 30 };
    const { clock } = read(take, options);
    expectClose(clock.skewPpm, 55, 0.1);
    expectClose(clock.ratio, (rate / 48_000) * (1 + 55e-6), 1e-6);
    const at = (k: number) => captureSample(clock, k, take.sweepStarts[k] ?? 0);
    expectClose(
      at(2) - at(0),
      truePosition(take, options, take.sweepStarts[2] ?? 0) -
        truePosition(take, options, take.sweepStarts[0] ?? 0),
      0.05,
    );
  });

  it('places every segment by its own mark', () => {
    const options = { skewPpm: 120, snrDb: 30, latencySeconds: 1.1 };
    const { clock } = read(six, options);
    const errors = six.sweepStarts.map(
      (start, k) => captureSample(clock, k, start) - truePosition(six, options, start),
    );
    expectClose(
      errors,
      errors.map(() => errors[0]),
      0.02,
    );
  });

  it.each([
    ['480.37 samples in the first interval', [[0, 480.37]]],
    ['32 samples in the last interval', [[5, 32]]],
    ['a repeat of 1024 samples', [[2, -1024]]],
    [
      'two losses',
      [
        [1, 480.37],
        [4, 4096],
      ],
    ],
    [
      'losses in the first and the last interval',
      [
        [0, 1000],
        [5, 64],
      ],
    ],
    [
      'a loss and a repeat',
      [
        [2, 256],
        [3, -256],
      ],
    ],
  ] as const)('sizes %s', (_, made) => {
    const skewPpm = -60;
    const faults = made.map(([interval, samples], k) => ({
      atSample:
        truePosition(six, { skewPpm }, (six.sweepStarts[interval] ?? 0) + 20_000) -
        made.slice(0, k).reduce((sum, [, before]) => sum + before, 0),
      samples,
    }));
    const { clock, finding } = read(six, { skewPpm, snrDb: 20, faults });
    expect(finding.take).toBe('this take');
    expectClose(
      clock.steps.map(({ interval, kind, samples }) => ({ interval, kind, samples })),
      made.map(([interval, samples]) => ({
        interval,
        kind: samples > 0 ? 'lost' : 'repeated',
        samples: Math.abs(samples),
      })),
      0.05,
    );
    expectClose(clock.skewPpm, skewPpm, 0.1);
  });

  it('tells which of two intervals lost audio when there are three marks', () => {
    const take = makeTake({ channels: 2, sweepSamples: 2 ** 17 });
    for (const interval of [0, 1]) {
      const atSample = truePosition(take, {}, (take.sweepStarts[interval] ?? 0) + 60_000);
      const faults = [{ atSample, samples: 480.37 }];
      const { clock, finding } = read(take, { skewPpm: 45, snrDb: 30, faults });
      expect(finding.take).toBe('this take');
      expectClose(clock.skewPpm, 45, 0.1);
      expectClose(
        clock.steps.map((step) => [step.interval, step.samples]),
        [[interval, 480.37]],
        0.05,
      );
      expect(clock.skewKnown).toBe(true);
    }
  });

  it('widens the interval of the skew when two intervals contradict each other', () => {
    const take = makeTake({ channels: 2 });
    const atSample = truePosition(take, {}, (take.sweepStarts[0] ?? 0) + 30_000);
    const { clock } = read(take, { skewPpm: 60, snrDb: 30, faults: [{ atSample, samples: 32 }] });
    expect(clock.skewInterval[1]).toBeGreaterThan(59.5);
    expect(clock.skewInterval[0]).toBeLessThan(-100);
  });

  it('lets the sharpness of the sweeps decide between contradicting intervals', () => {
    const take = makeTake({ channels: 2, sweepSamples: 2 ** 17 });
    const sweeps = take.sweepStarts.map((startSample, mark) => ({
      mark,
      startSample,
      sweep: take.sweep,
    }));
    for (const [interval, samples] of [
      [0, 32],
      [1, -40],
    ] as const) {
      const atSample = truePosition(take, {}, (take.sweepStarts[interval] ?? 0) + 60_000);
      const options = {
        skewPpm: 140 * Math.sign(samples),
        snrDb: 25,
        faults: [{ atSample, samples }],
      };
      const capture = captureTake(take, roomsOf(2), options);
      const finding = findMarks(capture, 48_000, take.mark, take.markStarts);
      if (!finding) throw new Error('no marks were found');
      const judge = sweepSharpness(capture, finding, take.markStarts, sweeps);
      const clock = estimateClock(finding, take.markStarts, judge);
      expectClose(clock.skewPpm, options.skewPpm, 0.1);
      expectClose(
        clock.steps.map((step) => [step.interval, step.samples]),
        [[interval, Math.abs(samples)]],
        0.05,
      );
    }
  });

  it('covers the true skew with its 90 % interval about nine times in ten', () => {
    const take = makeTake({ channels: 4, sweepSamples: 2 ** 14, tailSeconds: 0.5 });
    const quiet = captureTake(take, roomsOf(4, 0.3), { skewPpm: 70 });
    let covered = 0;
    for (let seed = 1; seed <= 40; seed++) {
      const normal = gaussian(seededRandom(seed));
      const noisy = quiet.map((value) => value + 0.02 * normal());
      const finding = findMarks(noisy, 48_000, take.mark, take.markStarts);
      if (!finding) throw new Error('no marks were found');
      const clock = estimateClock(finding, take.markStarts);
      if (clock.skewInterval[0] <= 70 && 70 <= clock.skewInterval[1]) covered++;
    }
    expect(covered).toBeGreaterThanOrEqual(32);
  });

  it('refuses marks and starts of different number', () => {
    const { finding } = read(six, { snrDb: 30 });
    expect(() => estimateClock(finding, six.markStarts.slice(1))).toThrow(RangeError);
  });
});
