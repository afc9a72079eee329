import { describe, expect, it } from 'vitest';
import { practiceRig } from '../../src/rig/practice';
import type { CapturedBlock, MicLevel, PlayProgress } from '../../src/rig/port';
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

  it('runs a line beside the page, with levels, until it is closed', async () => {
    const { layout } = take('2.1');
    const blocks: CapturedBlock[] = [];
    const rig = practiceRig({ layout, seed: 4 });
    const levels: MicLevel[] = [];
    rig.monitor((level) => levels.push(level));
    let heard: () => void = () => undefined;
    const loud = new Promise<void>((resolve) => (heard = resolve));
    const line = await rig.open({
      signal: new AbortController().signal,
      onEnd: ({ sentence }) => expect.fail(sentence),
      onBlock(block) {
        blocks.push(block);
        if (block.samples.some((value) => Math.abs(value) > 0.02)) heard();
      },
    });
    if (isTrouble(line)) return expect.fail(line.sentence);
    const period = Float32Array.from({ length: 48000 }, (_, n) =>
      Math.sin((2 * Math.PI * n) / 120),
    );
    line.play({ channel: 'FL', period, gainDb: -6 });
    line.setGain(0);
    await loud;
    line.close();
    line.close();
    const atEnd = blocks.length;
    await new Promise((resolve) => setTimeout(resolve, 200));
    expect(blocks).toHaveLength(atEnd);
    expect(levels.length).toBeGreaterThan(0);
    const frames = blocks.map(({ frame }) => frame);
    expect(frames).toEqual(frames.toSorted((a, b) => a - b));
    expect(line).toMatchObject({ sampleRate: 48000, simulated: true });
  });

  it('hears the sound asked for last', async () => {
    const { layout } = take('2.1');
    const abort = new AbortController();
    let hear: (samples: Float32Array) => void = () => undefined;
    const rig = practiceRig({ layout, seed: 4, faults: { silent: ['FL'] } });
    const line = await rig.open({
      signal: abort.signal,
      onEnd: ({ sentence }) => expect.fail(sentence),
      onBlock: ({ samples }) => hear(samples),
    });
    if (isTrouble(line)) return expect.fail(line.sentence);
    const period = Float32Array.from({ length: 480 }, (_, n) => Math.sin((2 * Math.PI * n) / 120));
    line.play({ channel: 'FL', period, gainDb: 0 });
    line.play({ channel: 'FR', period, gainDb: 0 });
    const peak = await new Promise<number>((resolve) => {
      hear = (samples) => {
        const most = samples.reduce((max, value) => Math.max(max, Math.abs(value)), 0);
        if (most > 0.02) resolve(most);
      };
    });
    abort.abort();
    expect(peak).toBeGreaterThan(0.02);
  });
});
