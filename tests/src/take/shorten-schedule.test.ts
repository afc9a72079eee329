import { describe, expect, it } from 'vitest';
import { layoutFromName } from '../../../src/system/layout';
import { partialEnd, shortenSchedule } from '../../../src/take/shorten-schedule';
import { scheduleTake } from '../../../src/take/schedule-take';
import { isTrouble } from '../../../src/trouble';

const layout = layoutFromName('5.1');
if (isTrouble(layout)) throw new Error(layout.sentence);
const schedule = scheduleTake(layout);
const markEnd = (index: number): number =>
  (schedule.markStarts[index] ?? 0) + schedule.mark.lengthSamples;

describe('the schedule of a take that ended early', () => {
  it('is the schedule itself when the last mark was played whole', () => {
    expect(shortenSchedule(schedule, schedule.lengthSamples)).toBe(schedule);
    expect(shortenSchedule(schedule, markEnd(6))).toBe(schedule);
  });

  it('holds the segments whose closing mark was played, and no others', () => {
    const shorter = shortenSchedule(schedule, markEnd(3) + 1000);
    expect(shorter?.channels).toEqual(['FL', 'FR', 'FC']);
    expect(shorter?.segments).toEqual(schedule.segments.slice(0, 3));
    expect(shorter?.markStarts).toEqual(schedule.markStarts.slice(0, 4));
    expect(shorter?.lengthSamples).toBe(markEnd(3));
  });

  it('loses a segment whose closing mark was cut by one sample', () => {
    expect(shortenSchedule(schedule, markEnd(3) - 1)?.channels).toEqual(['FL', 'FR']);
  });

  it('is none when nothing was finished', () => {
    expect(shortenSchedule(schedule, markEnd(1) - 1)).toBeNull();
    expect(shortenSchedule(schedule, 0)).toBeNull();
  });

  it('has an id of its own', () => {
    expect(shortenSchedule(schedule, markEnd(2))?.id).not.toBe(schedule.id);
  });

  it('keeps of the capture its last mark however late, and not the one after', () => {
    for (const sweepSeconds of [0.5, 2.7, 8]) {
      const whole = scheduleTake(layout, { sweepSeconds });
      const shorter = shortenSchedule(whole, (whole.markStarts[3] ?? 0) + 5000);
      if (!shorter) throw new Error('three speakers were finished');
      const end = partialEnd(whole, shorter);
      expect(end - shorter.lengthSamples).toBeGreaterThan(48000);
      expect(end).toBeLessThan(whole.markStarts[4] ?? 0);
    }
  });
});
