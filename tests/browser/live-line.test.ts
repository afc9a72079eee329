import { describe, expect, it, vi } from 'vitest';
import type { CaptureMessage } from '../../src/rig/live/capture-message';
import { liveRig } from '../../src/rig/live/live-rig';
import { isTrouble, type Trouble } from '../../src/trouble';
import { lineContract } from '../src/rig/contract';
import { shortTakeOf } from '../src/rig/short-take';

/*
 * The worklet is one script only in the built app, which the audio journeys run. Here a noise on a
 * timer stands in for it; microphone, context, graph and watchers are the browser's.
 */
vi.mock('../../src/rig/live/connect-capture', () => ({
  connectCapture(_output: unknown, _microphone: unknown, send: (message: CaptureMessage) => void) {
    let frame = 0;
    const timer = setInterval(() => {
      const channels = [0.01, 0].map((value) => new Float32Array(4096).fill(value));
      send({ kind: 'chunk', frame, channels });
      frame += 4096;
      send({ kind: 'level', frame, rms: 0.01, peak: 0.01 });
    }, 85);
    return Promise.resolve({ close: () => clearInterval(timer) });
  },
}));

/** A line of the live rig with what ended it. */
async function openLine(routes: { readonly FR?: number } = {}) {
  const ends: Trouble[] = [];
  const line = await liveRig().open({
    signal: new AbortController().signal,
    routes,
    onBlock: () => undefined,
    onEnd: (reason) => ends.push(reason),
  });
  if (isTrouble(line)) throw new Error(line.sentence);
  return { line, ends };
}

const period = new Float32Array(4800);

describe('a line of the live rig', () => {
  lineContract(() =>
    Promise.resolve({
      rig: liveRig(),
      schedule: shortTakeOf('2.0'),
      gives: 'capture',
      opens: 'line',
    }),
  );

  it('ends with a sentence when a speaker belongs on an output the device lacks', async () => {
    const { line, ends } = await openLine({ FR: 31 });
    line.play({ channel: 'FR', period, gainDb: -20 });
    expect(ends).toMatchObject([
      { trouble: 'no-output', sentence: expect.stringContaining('output 32') as string },
    ]);
    line.play({ channel: 'FL', period, gainDb: -20 });
    line.close();
    expect(ends).toHaveLength(1);
  });

  it('ends with a sentence when a speaker has no output at all', async () => {
    const { line, ends } = await openLine();
    line.play({ channel: 'TpFL', period, gainDb: -20 });
    expect(ends).toMatchObject([
      { sentence: expect.stringContaining('TpFL has no output') as string },
    ]);
  });

  it('refuses a period that would clip', async () => {
    const { line } = await openLine();
    const loud = Float32Array.of(0, 1.5, Number.NaN);
    expect(() => line.play({ channel: 'FL', period: loud, gainDb: -20 })).toThrow(RangeError);
    line.close();
  });
});
