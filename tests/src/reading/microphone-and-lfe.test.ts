import { describe, expect, it } from 'vitest';
import { bassGrid } from '../../../dsp/bass/transfer';
import { heardBass } from '../../../src/reading/heard-bass';
import type { Readings } from '../../../src/reading/reading';
import {
  nothingInForce,
  usualFilters,
  type DeclaredSettings,
} from '../../../src/system/declared-settings';
import type { Schedule } from '../../../src/take/schedule';
import { scheduleTake } from '../../../src/take/schedule-take';
import { expectClose } from '../../close';
import { filtered, linkwitzRiley } from '../../loop/processor/digital-filter';
import { hearWires, layoutNamed, readWires, readingOf, type Wires } from './wired-room';

const schedule = scheduleTake(layoutNamed('2.1'), { sweepSeconds: 0.5 });
const wires: Wires = {
  FL: { delaySamples: 420, gain: 0.5 },
  FR: { delaySamples: 350, gain: 0.4 },
  'Sub 1': { delaySamples: 400, gain: 0.5 },
};
const samples = hearWires(schedule, wires);

describe('a calibrated microphone', () => {
  const calibration = { name: 'invented.txt', hz: [10, 24000], db: [3, 3], phaseDegrees: null };

  it('is taken out of levels and responses, moves no arrival, and is told', async () => {
    const plain = await readWires(schedule, samples);
    const readings = await readWires(schedule, samples, { calibration });
    for (const { channel, levelDb, arrivalSeconds } of plain.channels) {
      const found = readingOf(readings, channel);
      expectClose(found.levelDb, (levelDb ?? 0) - 3, 1e-3);
      expectClose(found.arrivalSeconds, arrivalSeconds, 1e-7);
    }
    expect(readings.notes[0]).toMatch(/invented\.txt.*minimum phase/);
    expect(plain.notes.join()).not.toMatch(/minimum phase/);
  });

  it('whose bass falls gives the speaker its bass back, and the noise with it', async () => {
    const hz = [10, 20, 40, 80, 20000];
    const falling = { name: 'bass.txt', hz, db: [-9, -9, -6, 0, 0], phaseDegrees: null };
    const at = (curve: { hz: number[] }, values: number[], want: number): number =>
      values[curve.hz.findIndex((f) => f >= want)] ?? Number.NaN;
    const before = readingOf(await readWires(schedule, samples), 'FR').curves?.response;
    const read = await readWires(schedule, samples, { calibration: falling });
    const after = readingOf(read, 'FR').curves?.response;
    if (!before || !after) return expect.fail('both must have curves');
    expectClose(at(after, after.db, 40) - at(before, before.db, 40), 6, 0.4);
    expectClose(at(after, after.noiseDb, 40) - at(before, before.noiseDb, 40), 6, 0.4);
    expectClose(at(after, after.db, 1000) - at(before, before.db, 1000), 0, 0.05);
  });
});

describe('a sub over LFE', () => {
  const overLfe: Schedule = {
    ...schedule,
    segments: schedule.segments.map((segment) =>
      segment.channel === 'Sub 1' ? { ...segment, replayGainDb: 10 } : segment,
    ),
  };
  const replayed = { 'Sub 1': { delaySamples: 400, gain: 0.5 * 10 ** (10 / 20) } };
  const silent = { delaySamples: 0, gain: 0 };
  const mains = { FL: { delaySamples: 420, gain: 0.5 }, FR: { delaySamples: 350, gain: 0.4 } };

  // The filter is a bilinear transform of the analogue one, of code that reading does not share.
  it('is rid of the low-pass of LFE, where nothing else is declared of it', async () => {
    const sub = Float64Array.from(hearWires(overLfe, { ...replayed, FL: silent, FR: silent }));
    const low = filtered(sub, linkwitzRiley('low-pass', 4, 120, overLfe.sampleRate));
    const heard = hearWires(overLfe, { ...mains, 'Sub 1': silent }).map(
      (value, n) => value + (low[n] ?? 0),
    );
    const through = (crossoverHz: DeclaredSettings['crossoverHz']) =>
      readWires(overLfe, heard, {
        inForce: { ...nothingInForce, crossoverHz, filters: usualFilters },
      });
    const at80 = async (readings: Promise<Readings>): Promise<readonly [number, number]> => {
      const bass = heardBass(readingOf(await readings, 'Sub 1'));
      if (!bass) return expect.fail('the sub must have its bass');
      const k = bassGrid().findIndex((hz) => hz >= 80);
      const [re, im] = [bass.re[k] ?? 0, bass.im[k] ?? 0];
      return [20 * Math.log10(Math.hypot(re, im)), Math.atan2(im, re)];
    };
    const plain = await at80(readWires(schedule, samples));
    const assumed = await at80(through({}));
    expectClose(assumed[0], plain[0], 0.1);
    expectClose(assumed[1], plain[1], 0.05);
    expect((await through({})).notes.join('\n')).toMatch(
      /^Sub 1 was played over LFE, and the low-pass of LFE is not declared: taken as 120 Hz/m,
    );
    expect((await through({ fronts: null })).notes.join()).not.toMatch(/full range: subs/);
    // At 80 Hz, 2 arctan(√2·r/(1 − r²)) with r = 80/120: a Linkwitz-Riley of fourth order.
    const none = await at80(through({ subs: null }));
    const late = 2 * Math.atan2((Math.SQRT2 * 80) / 120, 1 - (80 / 120) ** 2);
    expectClose(plain[1] - none[1], late, 0.1);
    expect((await through({ subs: null })).notes.join()).not.toMatch(/taken as/);
  });

  it('has the level it has without the 10 dB, and says that it was played so', async () => {
    const plain = readingOf(await readWires(schedule, samples), 'Sub 1');
    const readings = await readWires(overLfe, hearWires(overLfe, { ...mains, ...replayed }));
    const sub = readingOf(readings, 'Sub 1');
    expectClose(sub.levelDb, plain.levelDb, 0.05);
    expect(sub.notes.join()).toMatch(/over LFE, 10 dB quieter/);
    expect(readingOf(readings, 'FL').notes.join()).not.toMatch(/LFE/);
  });
});
