import { beforeAll, describe, expect, it } from 'vitest';
import type { Capture } from '../../../src/rig/port';
import { practiceRig, type PracticeOptions } from '../../../src/rig/practice';
import { practiceSystem } from '../../../src/rig/practice-system';
import { practiceTruth } from '../../../src/rig/practice-truth';
import { layoutFromName } from '../../../src/system/layout';
import { planTake, type PlanOptions } from '../../../src/take/plan-take';
import type { Schedule, ScheduledSegment } from '../../../src/take/schedule';
import { isTrouble } from '../../../src/trouble';
import { expectClose } from '../../close';

const found = layoutFromName('2.1');
if (isTrouble(found)) throw new Error(found.sentence);
const layout = found;
const seed = 4;
const system = practiceSystem(layout, seed);
const rate = 48000;

function take(averages: number, overlap: boolean, options: PlanOptions = {}): Schedule {
  const settings = { sweepSeconds: 0.5, averages, pauseSeconds: 0, overlap, repeats: 0 };
  const plan = planTake(layout, settings, null, options);
  const schedule = isTrouble(plan) ? undefined : plan.parts[0]?.schedule;
  if (!schedule) throw new Error('no take');
  return schedule;
}

async function play(
  schedule: Schedule,
  options: Partial<PracticeOptions> = {},
  gainDb = 0,
): Promise<Capture> {
  const rig = practiceRig({ layout, seed, ...options });
  const capture = await rig.play(schedule, { signal: new AbortController().signal, gainDb });
  if (isTrouble(capture)) return expect.fail(capture.sentence);
  return capture;
}

/** Where the sweep of a segment starts in the capture. */
function startOf({ sweepStart }: ScheduledSegment): number {
  return Math.round(sweepStart * (1 + system.skewPpm * 1e-6) + system.latencySeconds * rate);
}

function rms(samples: Float32Array, from: number, to: number): number {
  const part = samples.subarray(from, to);
  return Math.sqrt(part.reduce((sum, value) => sum + value * value, 0) / part.length);
}

function segment({ segments }: Schedule, index: number): ScheduledSegment {
  const one = segments[index];
  if (!one) throw new Error(`no segment ${index}`);
  return one;
}

describe('a simulated take of the longer kinds', () => {
  const plain = take(1, false);
  let quiet: Capture;
  beforeAll(async () => {
    quiet = await play(plain);
  });

  it('plays every average alike', async () => {
    const schedule = take(2, false);
    const { samples } = await play(schedule);
    const [first, second] = [segment(schedule, 0), segment(schedule, 3)];
    expect([first.channel, second.channel]).toEqual(['FL', 'FL']);
    const level = (one: ScheduledSegment): number =>
      rms(samples, startOf(one), startOf(one) + 24000);
    expectClose(20 * Math.log10(level(first) / level(second)), 0, 0.05);
  });

  it('plays overlapping sweeps on top of each other', async () => {
    const schedule = take(1, true, { decaySeconds: 0.3 });
    const { samples } = await play(schedule);
    const [left, right] = [segment(schedule, 0), segment(schedule, 1)];
    expect(left.markStart).toBe(right.markStart);
    expect(right.sweepStart).toBeLessThan(left.sweepStart + left.sweep.lengthSamples);
    const both = startOf(right);
    const end = startOf(left) + left.sweep.lengthSamples;
    const alone = startOf(segment(plain, 0)) + both - startOf(left);
    const one = rms(quiet.samples, alone, alone + end - both);
    expect(rms(samples, both, end)).toBeGreaterThan(1.1 * one);
  });

  it('plays only the speakers of a repeat', async () => {
    const schedule = take(1, false, { channels: ['Sub 1'], attempt: 1 });
    expect(schedule.channels).toEqual(['FL', 'Sub 1']);
    const positions: number[] = [];
    const capture = await practiceRig({ layout, seed }).play(schedule, {
      signal: new AbortController().signal,
      onProgress: ({ position }) => positions.push(position),
    });
    expect(isTrouble(capture)).toBe(false);
    expect(positions).toEqual(positions.toSorted((a, b) => a - b));
  });

  it('replays LFE louder by what its stimulus is quieter', async () => {
    const routing = { outputs: 3, routes: {}, lfeOutput: 2 };
    const settings = {
      sweepSeconds: 0.5,
      averages: 1,
      pauseSeconds: 0,
      overlap: false,
      repeats: 0,
    };
    const plan = planTake(layout, settings, routing);
    const schedule = isTrouble(plan) ? undefined : plan.parts[0]?.schedule;
    if (!schedule) throw new Error('no take');
    const sub = segment(schedule, 2);
    expect([sub.channel, sub.replayGainDb]).toEqual(['Sub 1', 10]);
    const { samples } = await play(schedule);
    const level = rms(samples, startOf(sub), startOf(sub) + 24000);
    const before = startOf(segment(plain, 2));
    expectClose(20 * Math.log10(level / rms(quiet.samples, before, before + 24000)), 0, 0.05);
  });

  it('makes the noises that are asked for, in that sweep alone, however quiet the take', async () => {
    for (const kind of ['bang', 'rumble', 'hum', 'voice'] as const) {
      const faults = {
        disturbances: [{ kind, channel: 'FR', afterSeconds: 0.1, peakDb: -20 }],
      } as const;
      const { samples } = await play(plain, { faults });
      const added = samples.map((value, n) => value - (quiet.samples[n] ?? 0));
      const peak = added.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
      expectClose(20 * Math.log10(peak), -20, 0.01);
      const from = added.findIndex((value) => Math.abs(value) > 0);
      const start = startOf(segment(plain, 1));
      expect(from - start).toBeGreaterThanOrEqual(4799);
      expect(from - start).toBeLessThan(7200);
    }
  });

  it('turns the gain in a sweep and leaves it there', async () => {
    const { samples } = await play(plain, { faults: { gainSteps: [{ channel: 'FR', db: 6 }] } });
    const at = startOf(segment(plain, 1)) + 8000;
    expect(samples.subarray(0, at - 2)).toEqual(quiet.samples.subarray(0, at - 2));
    const after = rms(samples, at + 2, samples.length) / rms(quiet.samples, at + 2, samples.length);
    expectClose(20 * Math.log10(after), 6, 1e-3);
  });

  it('may break one take and not the next', async () => {
    const faults = ({ id }: Schedule) => (id === plain.id ? { clipLevel: 0.02 } : {});
    const peak = ({ samples }: Capture): number =>
      samples.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    expect(peak(await play(plain, { faults }))).toBeLessThan(0.021);
    const again = take(1, false, { attempt: 1 });
    expect(peak(await play(again, { faults }))).toBeGreaterThan(0.03);
  });

  it('hears the wire to the reference speaker on the second input when asked', async () => {
    expect(quiet.loopback).toBeNull();
    const { samples, loopback } = await play(plain, { loopback: true }, -6);
    if (!loopback) return expect.fail('no loopback');
    expect(loopback.length).toBe(samples.length);
    const left = startOf(segment(plain, 0));
    const peak = loopback
      .subarray(left, left + 24000)
      .reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    // -12 dB of the take, -6 dB of the gain, half by the wire.
    expectClose(20 * Math.log10(peak), -12 - 6 - 6.02, 0.05);
    const right = startOf(segment(plain, 1));
    expect(rms(loopback, right, right + 24000)).toBeLessThan(1e-4);
  });
});

describe('another seat in the practice room', () => {
  it('has the same speakers at other distances', () => {
    for (const one of [3, 4, 11, 20]) {
      const main = practiceSystem(layout, one);
      const seats = [1, 2, 3].map((seat) => practiceSystem(layout, one, seat));
      for (const { speakers, skewPpm, room, microphone } of seats) {
        expect(speakers).toEqual(main.speakers);
        expect([skewPpm, room]).toEqual([main.skewPpm, main.room]);
        expect(microphone).not.toEqual(main.microphone);
        expect(microphone.x > 0.3 && microphone.x < room.size.x - 0.3).toBe(true);
        expect(microphone.y > 0.3 && microphone.y < room.size.y - 0.3).toBe(true);
      }
      expect(new Set(seats.map(({ microphone }) => microphone.x)).size).toBe(3);
    }
    expect(practiceTruth(layout, 3, 1).referenceDistanceMetres).not.toBe(
      practiceTruth(layout, 3).referenceDistanceMetres,
    );
    expect(() => practiceSystem(layout, 3, -1)).toThrow(RangeError);
    expect(() => practiceRig({ layout, seed, seat: 0.5 })).toThrow(RangeError);
  });
});
