import { describe, expect, it } from 'vitest';
import { practiceRig } from '../../src/rig/practice';
import type { MicLevel, PlayProgress } from '../../src/rig/port';
import { layoutFromName } from '../../src/system/layout';
import { scheduleTake } from '../../src/take/schedule-take';
import { isTrouble } from '../../src/trouble';

function take(name: string) {
  const layout = layoutFromName(name);
  if (isTrouble(layout)) throw new RangeError(layout.sentence);
  return { layout, schedule: scheduleTake(layout, { sweepSeconds: 0.5 }) };
}

describe('the practice rig in a browser', () => {
  it('simulates a take in a worker, with progress and levels, while the page goes on', async () => {
    const { layout, schedule } = take('2.1');
    const rig = practiceRig({ layout, seed: 3 });
    const steps: PlayProgress[] = [];
    const levels: MicLevel[] = [];
    let turns = 0;
    const turning = setInterval(() => turns++, 10);
    const leave = rig.monitor((level) => levels.push(level));
    const capture = await rig.play(schedule, {
      signal: new AbortController().signal,
      onProgress: (step) => steps.push(step),
    });
    clearInterval(turning);
    leave();
    if (isTrouble(capture)) return expect.fail(capture.sentence);
    expect(capture.samples.length).toBeGreaterThan(schedule.lengthSamples);
    expect(steps.length).toBeGreaterThan(layout.channels.length);
    expect(steps.at(-1)?.progress).toBe(1);
    expect(levels).toHaveLength(layout.channels.length);
    expect(turns).toBeGreaterThan(5);
  });

  it('stops at once', async () => {
    const { layout, schedule } = take('9.4.6');
    const abort = new AbortController();
    const steps: PlayProgress[] = [];
    const result = await practiceRig({ layout, seed: 3 }).play(schedule, {
      signal: abort.signal,
      onProgress: (step) => {
        steps.push(step);
        abort.abort();
      },
    });
    expect(result).toMatchObject({ trouble: 'stopped' });
    expect(steps).toHaveLength(1);
  });

  it('says so when the simulation fails, instead of waiting for ever', async () => {
    const { layout, schedule } = take('2.1');
    const buffers = [{ atSample: 1e9, samples: 64 }];
    const rig = practiceRig({ layout, seed: 3, faults: { buffers } });
    const result = await rig.play(schedule, { signal: new AbortController().signal });
    expect(result).toMatchObject({ trouble: 'failed' });
  });
});
