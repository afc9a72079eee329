import { beforeAll, describe, expect, it } from 'vitest';
import { trustedBands } from '../../../src/reading/noise-floor-margins';
import { rateNoiseFloor } from '../../../src/reading/noise-floor-rating';
import type { Readings } from '../../../src/reading/reading';
import { parseReadings } from '../../../src/schema/parse-readings';
import { isTrouble } from '../../../src/trouble';
import { scheduleTake } from '../../../src/take/schedule-take';
import { expectClose } from '../../close';
import { hearWires, layoutNamed, readWires, readingOf } from './wired-room';

const schedule = scheduleTake(layoutNamed('2.1'), { sweepSeconds: 0.5 });
const label = schedule.reference;
const rms = 2e-3;

describe('the noise of a take in octave bands', () => {
  let noisy: Readings;
  let quiet: Readings;
  beforeAll(async () => {
    const heard = hearWires(schedule, {}, { rms, seed: 3 });
    // A door slams in the silence.
    heard.fill(0.3, 40_000, 42_000);
    const calibration = { name: 'invented', hz: [10, 24000], db: [6, 6], phaseDegrees: null };
    noisy = await readWires(schedule, heard, { calibration });
    quiet = await readWires(schedule, hearWires(schedule, {}, { rms: rms / 10, seed: 3 }));
  }, 120_000);

  it('holds what white noise has in each, without the microphone, a bang left out', () => {
    const { hz, db } = noisy.capture.noise ?? { hz: [], db: [] };
    expect(hz.map((mid) => Math.round(mid))).toEqual([
      32, 63, 126, 251, 501, 1000, 1995, 3981, 7943, 15849,
    ]);
    for (const [k, mid] of hz.entries()) {
      const width = mid * (10 ** 0.15 - 10 ** -0.15);
      // White noise spreads its mean square evenly up to half the rate.
      const expected = 10 * Math.log10((rms ** 2 * width) / 24_000) - 6;
      if (k > 1) expectClose(db[k], expected, 0.9, 'four seconds of noise');
    }
  });

  it('is rated once the sound level is known', () => {
    const floor = noisy.capture.noise;
    if (!floor) return expect.fail('it must be there');
    const at8k = 20 * Math.log10(rms) + 10 * Math.log10((7943 * 0.7046) / 24_000) - 6;
    const rated = rateNoiseFloor(floor, 30 - at8k);
    // 30 dB at 8 kHz is (30 + 8)/1.03 on the NR scale, and white noise decides at the top.
    expectClose(rated?.rating.rating, 38 / 1.03, 0.6);
    expect(rated?.rating.decidedByHz).toBe(8000);
    expect(rateNoiseFloor({ hz: [1000], db: [-80] }, 100)).toBeNull();
  });

  it('leaves a margin in each band of each reading, 20 dB less in ten times the noise', () => {
    const [loud, still] = [noisy, quiet].map((readings) => readingOf(readings, label).margins);
    for (const [k, mid] of (still?.hz ?? []).entries()) {
      const less = (still?.marginDb[k] ?? 0) - (loud?.marginDb[k] ?? 0);
      if (mid > 100 && mid < 9000) expectClose(less, 20, 1.5);
    }
    expect(still?.hz.length).toBe(10);
    expect(readingOf(quiet, 'Sub 1').margins?.hz.map(Math.round)).toEqual([16, 32, 63, 126]);
  });

  it('tells the bands that can be trusted', () => {
    const reading = readingOf(quiet, label);
    const told = { ...reading, margins: { hz: [1, 2, 4, 8, 16], marginDb: [3, 10, 40, 9, 12] } };
    expect(trustedBands(told)).toEqual([
      [2, 4],
      [16, 16],
    ]);
    expect(trustedBands({ ...reading, margins: null })).toEqual([]);
    expect(trustedBands(reading).length).toBe(1);
  });

  it('comes back from a file, and may be missing there', () => {
    const parsed = parseReadings(JSON.stringify(noisy));
    expect(isTrouble(parsed) ? parsed.sentence : parsed.capture.noise).toEqual(noisy.capture.noise);
    const bare = {
      ...noisy,
      capture: { clipped: [], noiseFloorDb: -60, peakDb: -1 },
      channels: noisy.channels.map((one) => ({ ...one, margins: undefined })),
    };
    expect(isTrouble(parseReadings(JSON.stringify(bare)))).toBe(false);
  });
});
