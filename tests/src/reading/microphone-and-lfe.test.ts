import { describe, expect, it } from 'vitest';
import type { Schedule } from '../../../src/take/schedule';
import { scheduleTake } from '../../../src/take/schedule-take';
import { expectClose } from '../../close';
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
  it('has the level it has without the 10 dB, and says that it was played so', async () => {
    const overLfe: Schedule = {
      ...schedule,
      segments: schedule.segments.map((segment) =>
        segment.channel === 'Sub 1' ? { ...segment, replayGainDb: 10 } : segment,
      ),
    };
    const replayed = { ...wires, 'Sub 1': { delaySamples: 400, gain: 0.5 * 10 ** (10 / 20) } };
    const plain = readingOf(await readWires(schedule, samples), 'Sub 1');
    const readings = await readWires(overLfe, hearWires(overLfe, replayed));
    const sub = readingOf(readings, 'Sub 1');
    expectClose(sub.levelDb, plain.levelDb, 0.05);
    expect(sub.notes.join()).toMatch(/over LFE, 10 dB quieter.*low-pass of LFE near 120 Hz/);
    expect(readingOf(readings, 'FL').notes.join()).not.toMatch(/LFE/);
  });
});
