import { beforeAll, describe, expect, it } from 'vitest';
import type { Capture, MicLevel } from '../../../src/rig/port';
import { practiceRig, type PracticeOptions } from '../../../src/rig/practice';
import { layoutFromName } from '../../../src/system/layout';
import type { Layout } from '../../../src/system/channel';
import { isTrouble } from '../../../src/trouble';
import { expectClose } from '../../close';
import { rigContract } from './contract';
import { shortTake, shortTakeOf } from './short-take';

function layoutOf(name: string): Layout {
  const layout = layoutFromName(name);
  if (isTrouble(layout)) throw new RangeError(layout.sentence);
  return layout;
}

const layout = layoutOf('2.1');

async function play(options: Partial<PracticeOptions> = {}, gainDb = 0): Promise<Capture> {
  const rig = practiceRig({ layout, seed: 3, ...options });
  const capture = await rig.play(shortTake, { signal: new AbortController().signal, gainDb });
  if (isTrouble(capture)) throw new RangeError(capture.sentence);
  return capture;
}

function rms(samples: Float32Array, from: number, to: number): number {
  let power = 0;
  for (const value of samples.subarray(from, to)) power += value * value;
  return Math.sqrt(power / (to - from));
}

rigContract('practice', () =>
  Promise.resolve({
    rig: practiceRig({ layout, seed: 3 }),
    schedule: shortTake,
    gives: 'capture',
    opens: 'line',
  }),
);

describe('the practice rig', () => {
  let plain: Capture;
  /** Samples of the capture that surely lie in a sweep, whatever the latency. */
  const inSweep = (capture: Capture, index: number, gapSeconds = 0.38): number => {
    const { samples } = capture;
    const start = (shortTake.segments[index]?.sweepStart ?? 0) + gapSeconds * 48000;
    return rms(samples, Math.round(start), Math.round(start + 0.25 * 48000));
  };
  beforeAll(async () => {
    plain = await play();
  });

  it('gives the same capture for the same seed and another for another', async () => {
    const again = await play({ now: () => plain.startedAt });
    const other = await play({ seed: 4 });
    expect({ ...again, samples: null }).toEqual({ ...plain, samples: null });
    expect(again.samples.findIndex((value, n) => value !== plain.samples[n])).toBe(-1);
    expect(other.samples.findIndex((value, n) => value !== plain.samples[n])).toBe(0);
  });

  it('marks its capture as simulated', () => {
    expect(plain.simulated).toBe(true);
    expect(plain.notes.join(' ')).toContain('Simulated');
  });

  it('is quiet before the take, loud in the sweeps, and does not clip', () => {
    const floor = rms(plain.samples, 0, 2 * 48000);
    expect(20 * Math.log10(inSweep(plain, 0) / floor)).toBeGreaterThan(25);
    expect(plain.samples.reduce((peak, value) => Math.max(peak, Math.abs(value)), 0)).toBeLessThan(
      0.5,
    );
  });

  it('plays more quietly by the gain', async () => {
    const quiet = await play({}, -12);
    expectClose(20 * Math.log10(inSweep(plain, 0) / inSweep(quiet, 0)), 12, 0.1, 'noise');
  });

  it('silences a speaker that is broken on purpose', async () => {
    const broken = await play({ faults: { silent: ['FR'] } });
    expect(inSweep(broken, 1)).toBeLessThan(inSweep(plain, 1) / 20);
    expectClose(inSweep(broken, 0), inSweep(plain, 0), 1e-6);
  });

  it('clips where it is told to', async () => {
    const clipped = await play({ faults: { clipLevel: 0.02 } });
    const peak = clipped.samples.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    expectClose(peak, 0.02, 1e-6);
  });

  it('loses frames where it is told to', async () => {
    const at = 400000;
    const torn = await play({ faults: { buffers: [{ atSample: at, samples: 480 }] } });
    expect(torn.samples.length).toBe(plain.samples.length - 480);
    expect(torn.samples[at]).toBe(plain.samples[at + 480]);
  });

  it('tells the level of each speaker while it plays', async () => {
    const levels: MicLevel[] = [];
    const rig = practiceRig({ layout, seed: 3 });
    rig.monitor((level) => levels.push(level));
    await rig.play(shortTake, { signal: new AbortController().signal });
    expect(levels).toHaveLength(layout.channels.length);
    for (const { rmsDb, peakDb, clipped } of levels) {
      expect(rmsDb).toBeLessThan(peakDb);
      expect(peakDb).toBeLessThan(0);
      expect(clipped).toBe(false);
    }
  });

  it('records at 48 kHz whatever the rate of the take', async () => {
    const rig = practiceRig({ layout, seed: 3 });
    const schedule = shortTakeOf('2.1', 44100);
    const capture = await rig.play(schedule, { signal: new AbortController().signal });
    if (isTrouble(capture)) return expect.fail(capture.sentence);
    const seconds = schedule.lengthSamples / schedule.sampleRate;
    expect(capture.sampleRate).toBe(48000);
    expect(capture.samples.length / 48000).toBeGreaterThan(seconds);
    expect(capture.samples.length / 48000).toBeLessThan(seconds + 1);
  });

  it('refuses a take for another layout', async () => {
    const rig = practiceRig({ layout, seed: 3 });
    const other = await rig.play(shortTakeOf('3.1'), { signal: new AbortController().signal });
    expect(other).toMatchObject({ trouble: 'other-take' });
    expect(() => practiceRig({ layout, seed: Number.NaN })).toThrow(RangeError);
  });
});
