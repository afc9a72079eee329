import { describe, expect, it } from 'vitest';
import { planTake } from '../../../src/take/plan-take';
import type { Schedule } from '../../../src/take/schedule';
import type { TakeSettings } from '../../../src/take/take-plan';
import { isTrouble } from '../../../src/trouble';
import { expectClose } from '../../close';
import { hearWires, layoutNamed, readWires, readingOf, type Wires } from './wired-room';

const settings: TakeSettings = {
  sweepSeconds: 1,
  averages: 1,
  pauseSeconds: 0,
  overlap: false,
  repeats: 0,
};

function plan(
  layout: string,
  change: Partial<TakeSettings>,
  decaySeconds: number | null,
): Schedule {
  const planned = planTake(layoutNamed(layout), { ...settings, ...change }, null, { decaySeconds });
  if (isTrouble(planned)) throw new RangeError(planned.sentence);
  const [part] = planned.parts;
  if (!part) throw new RangeError('the plan must hold a take');
  return part.schedule;
}

const wires: Wires = {
  FL: { delaySamples: 336, gain: 0.5 },
  FR: { delaySamples: 400, gain: -0.4, echo: { delaySamples: 3000, gain: 0.1 } },
  FC: { delaySamples: 300, gain: 0.25 },
  SiL: { delaySamples: 280, gain: 0.3 },
  SiR: { delaySamples: 290, gain: 0.35 },
  'Sub 1': { delaySamples: 350, gain: 0.6 },
};

describe('sweeps that overlap', () => {
  it('are read as those that do not, in a take that is shorter', async () => {
    const apart = plan('5.1', {}, null);
    const together = plan('5.1', { overlap: true }, 0.3);
    expect(together.lengthSamples).toBeLessThan(0.75 * apart.lengthSamples);
    expect(together.markStarts.length).toBeLessThan(together.segments.length);
    const readings = await readWires(together, hearWires(together, wires));
    const plain = await readWires(apart, hearWires(apart, wires));
    for (const { channel, levelDb, arrivalSeconds, polarity, faults } of plain.channels) {
      const found = readingOf(readings, channel);
      expect({ channel, faults: found.faults, polarity: found.polarity }).toEqual({
        channel,
        faults,
        polarity,
      });
      expectClose(found.levelDb, levelDb, 0.02, 'the echo lies within the decay');
      if (channel !== 'Sub 1') expectClose(found.arrivalSeconds, arrivalSeconds, 2e-6);
    }
    expectClose(readingOf(readings, 'FR').arrivalSeconds, 64 / 48000, 2e-6);
    expectClose(readingOf(readings, 'SiL').levelDb, together.peakDb + 20 * Math.log10(0.3), 0.05);
  });

  it('are all spoilt by audio that was lost among them, and those of other marks are not', async () => {
    const schedule = plan('5.1', { overlap: true }, 0.3);
    const heard = hearWires(schedule, wires);
    const at = (schedule.segments[2]?.sweepStart ?? 0) + 20000;
    const damaged = new Float32Array(heard.length - 480);
    damaged.set(heard.subarray(0, at));
    damaged.set(heard.subarray(at + 480), at);
    const readings = await readWires(schedule, damaged);
    const own = schedule.segments[2]?.markStart;
    const hit = schedule.segments.filter(({ markStart }) => markStart === own);
    expect(hit.length).toBeGreaterThan(1);
    for (const { channel, markStart } of schedule.segments) {
      const { faults, levelDb } = readingOf(readings, channel);
      if (markStart === own) {
        expect(levelDb).toBeNull();
        expect(faults).toMatchObject([{ kind: 'lost' }]);
      } else {
        expect(faults).toEqual([]);
        const gainDb = 20 * Math.log10(Math.abs(wires[channel]?.gain ?? 0));
        expectClose(levelDb, schedule.peakDb + gainDb, 0.3, 'with its echo');
      }
    }
  });
});

describe('sweeps that are averaged', () => {
  it('have a noise that is lower by their number', async () => {
    const noise = { rms: 3e-3, seed: 4 };
    const floorOf = async (averages: number): Promise<number> => {
      const schedule = plan('2.1', { averages, sweepSeconds: 0.5 }, null);
      const readings = await readWires(schedule, hearWires(schedule, wires, noise));
      return readingOf(readings, 'FR').peakToNoiseDb ?? Number.NaN;
    };
    expectClose((await floorOf(4)) - (await floorOf(1)), 10 * Math.log10(4), 1.5, 'one draw each');
  });

  it('leave out the spoilt one, name it and keep the speaker whole', async () => {
    const schedule = plan('2.1', { averages: 3, sweepSeconds: 0.5 }, null);
    const heard = hearWires(schedule, wires);
    const second = schedule.segments.filter(({ channel }) => channel === 'FR')[1];
    const from = second?.sweepStart ?? 0;
    for (let n = from; n < (second?.end ?? 0); n++) {
      heard[n] = Math.max(-0.02, Math.min(0.02, heard[n] ?? 0));
    }
    const readings = await readWires(schedule, heard);
    const { faults, notes, levelDb } = readingOf(readings, 'FR');
    expect(faults).toEqual([]);
    expect(notes).toContainEqual(expect.stringMatching(/^Sweep 2 of 3 left out: Clipped/));
    expect(notes).toContain('Read from 2 of 3 sweeps.');
    expectClose(levelDb, schedule.peakDb + 20 * Math.log10(0.4), 0.3, 'with its echo');
    expect(readings.channels).toHaveLength(3);
  });
});
