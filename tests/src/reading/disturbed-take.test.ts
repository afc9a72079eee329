import { describe, expect, it } from 'vitest';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { joinReadings } from '../../../src/reading/join-readings';
import { segmentsToRepeat } from '../../../src/reading/segments-to-repeat';
import { practiceSystem } from '../../../src/rig/practice-system';
import { renderCapture } from '../../../src/rig/practice-capture';
import { planTake } from '../../../src/take/plan-take';
import type { Schedule } from '../../../src/take/schedule';
import { scheduleTake } from '../../../src/take/schedule-take';
import { isTrouble } from '../../../src/trouble';
import { expectClose } from '../../close';
import { hearWires, layoutNamed, readWires, readingOf } from './wired-room';

const layout = layoutNamed('3.1');

/** Half a second of decaying noise below 1 kHz or so, as a door slams. */
function addBang(heard: Float32Array, at: number, peak: number): void {
  const normal = gaussian(seededRandom(21));
  let low = 0;
  for (let n = 0; n < 24000; n++) {
    low += 0.1 * (normal() - low);
    heard[at + n] = (heard[at + n] ?? 0) + 4 * peak * low * Math.exp(-n / 3000);
  }
}

function startOf(schedule: Schedule, label: string): number {
  const segment = schedule.segments.find(({ channel }) => channel === label);
  if (!segment) throw new RangeError(`${label} must be swept`);
  return segment.sweepStart;
}

describe('a door that slams during a take', () => {
  const schedule = scheduleTake(layout, { sweepSeconds: 1 });

  it('is named in its segment alone, which a repeat mends', async () => {
    const heard = hearWires(schedule, {});
    const clean = await readWires(schedule, heard);
    const damaged = heard.slice();
    addBang(damaged, startOf(schedule, 'FR') + 12000, 0.3);
    const readings = await readWires(schedule, damaged);
    expect(segmentsToRepeat(clean)).toEqual([]);
    expect(segmentsToRepeat(readings)).toEqual(['FR']);
    const [fault] = readingOf(readings, 'FR').faults;
    expect(fault?.kind).toBe('bang');
    expect(fault?.sentence).toMatch(/dB near \d+ Hz\. Repeat this segment when it is quiet\.$/);
    const joined = joinReadings([readings, clean]);
    expect(segmentsToRepeat(joined)).toEqual([]);
    const { levelDb } = readingOf(clean, 'FR');
    expectClose(readingOf(joined, 'FR').levelDb, levelDb, 0.01);
  });

  it('is found under sweeps that overlap', async () => {
    const settings = { sweepSeconds: 1.5, averages: 1, pauseSeconds: 0, overlap: true, repeats: 0 };
    const planned = planTake(layout, settings, null, { decaySeconds: 0.6 });
    if (isTrouble(planned)) throw new RangeError(planned.sentence);
    const overlapping = planned.parts[0]?.schedule ?? schedule;
    expect(overlapping.markStarts.length).toBeLessThan(overlapping.segments.length);
    const heard = await renderCapture(practiceSystem(layout, 3), overlapping);
    if (!heard) throw new RangeError('the rendering must run to its end');
    expect(segmentsToRepeat(await readWires(overlapping, heard))).toEqual([]);
    const peak = heard.reduce((most, one) => Math.max(most, Math.abs(one)), 0);
    addBang(heard, startOf(overlapping, 'FR') + 24000, peak);
    expect(segmentsToRepeat(await readWires(overlapping, heard))).toContain('FR');
  }, 60_000);
});

describe('practice rooms in which nothing is wrong', () => {
  it.each([3, 4, 7])(
    'have no fault in room %i',
    async (seed) => {
      const schedule = scheduleTake(layout, { sweepSeconds: 1.5 });
      const samples = await renderCapture(practiceSystem(layout, seed), schedule);
      if (!samples) throw new RangeError('the rendering must run to its end');
      const readings = await readWires(schedule, samples);
      expect(readings.channels.map(({ channel, faults }) => ({ channel, faults }))).toEqual(
        schedule.channels.map((channel) => ({ channel, faults: [] })),
      );
    },
    60_000,
  );
});
