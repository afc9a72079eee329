import { describe, expect, it } from 'vitest';
import { impulseResponseAt } from '../../../dsp/room/impulse-response-at';
import type { CapturedBlock, Line } from '../../../src/rig/port';
import { practiceRig, type PracticeOptions } from '../../../src/rig/practice';
import { soundHearer } from '../../../src/rig/practice-hear';
import { lineSimulation } from '../../../src/rig/practice-line-sound';
import { practiceSystem } from '../../../src/rig/practice-system';
import { layoutFromName } from '../../../src/system/layout';
import { isTrouble, type Trouble } from '../../../src/trouble';
import { expectClose } from '../../close';

const found = layoutFromName('2.1');
if (isTrouble(found)) throw new Error(found.sentence);
const layout = found;
const seed = 4;
const system = practiceSystem(layout, seed);
const quiet = { ...system, noise: { pink: 0, hiss: 0 } };
const rate = 48000;
const hear = soundHearer(system);

/** A tone that fits its period of 4800 samples. */
const toneHz = 400;
const tone = Float32Array.from({ length: 4800 }, (_, n) =>
  Math.sin((2 * Math.PI * toneHz * n) / rate),
);

/** Rms of the amplitude at `hz`, by correlation over whole cycles. */
function amplitudeAt(hz: number, samples: Float32Array, from: number, length: number): number {
  let re = 0;
  let im = 0;
  for (let n = 0; n < length; n++) {
    const turn = (2 * Math.PI * hz * n) / rate;
    const value = samples[from + n] ?? 0;
    re += value * Math.cos(turn);
    im += value * Math.sin(turn);
  }
  return (2 * Math.hypot(re, im)) / length;
}

function rms(samples: Float32Array): number {
  return Math.sqrt(samples.reduce((sum, value) => sum + value * value, 0) / samples.length);
}

describe('the sound of a line into the practice room', () => {
  it('plays a tone as loud as the response of the room to it says', () => {
    const line = lineSimulation(quiet);
    line.play(hear({ channel: 'FR', period: tone, gainDb: -6 }));
    const { samples } = line.next(2 * rate);
    const [, right] = system.speakers;
    if (!right) throw new Error('no speaker');
    const response = impulseResponseAt(system.room, right.speaker, system.microphone, rate);
    let re = 0;
    let im = 0;
    for (const [n, value] of response.entries()) {
      re += value * Math.cos((2 * Math.PI * toneHz * n) / rate);
      im += value * Math.sin((2 * Math.PI * toneHz * n) / rate);
    }
    const gain = 10 ** ((system.sensitivityDb - 6) / 20);
    const heard = amplitudeAt(toneHz / (1 + system.skewPpm * 1e-6), samples, rate, rate);
    expectClose(20 * Math.log10(heard / (gain * Math.hypot(re, im))), 0, 0.01);
  });

  it('runs on a second clock', () => {
    const line = lineSimulation({ ...quiet, skewPpm: 500 });
    line.play(hear({ channel: 'FL', period: tone, gainDb: 0 }));
    const { samples } = line.next(12 * rate);
    const slower = amplitudeAt(toneHz / 1.0005, samples, rate, 10 * rate);
    // 0.2 Hz away, over 10 s, two whole turns cancel.
    expect(amplitudeAt(toneHz, samples, rate, 10 * rate)).toBeLessThan(slower / 20);
  });

  it('begins after the latency, fades over 50 ms, and gives the same in any blocks', () => {
    const whole = lineSimulation(quiet);
    const pieces = lineSimulation(quiet);
    for (const line of [whole, pieces]) line.play(hear({ channel: 'FL', period: tone, gainDb: 0 }));
    const { samples } = whole.next(rate);
    const begin = Math.round(system.latencySeconds * rate);
    expect(rms(samples.subarray(0, begin - 1))).toBe(0);
    const steady = rms(samples.subarray(begin + 2400, begin + 4800));
    const half = rms(samples.subarray(begin + 1140, begin + 1260));
    expectClose(half / steady, 0.5, 0.05);
    const parts = Array.from({ length: 20 }, () => pieces.next(2400));
    expect(parts.map(({ frame }) => frame)).toEqual(parts.map((_, k) => 2400 * k));
    const joined = Float32Array.from(parts.flatMap((part) => [...part.samples]));
    expectClose(rms(joined.map((value, n) => value - (samples[n] ?? 0))), 0, 1e-6);
  });

  it('moves its gain, and ends in silence', () => {
    const line = lineSimulation(quiet);
    line.play(hear({ channel: 'FL', period: tone, gainDb: 0 }));
    line.next(rate);
    const before = rms(line.next(rate / 2).samples);
    line.setGain(-20);
    line.next(rate);
    expectClose(20 * Math.log10(rms(line.next(rate / 2).samples) / before), -20, 0.01);
    line.play(null);
    line.setGain(0);
    line.next(rate);
    expect(rms(line.next(rate / 2).samples)).toBe(0);
  });

  it('hears nothing but noise from a silent speaker', () => {
    const deaf = soundHearer(system, { silent: ['FL'] });
    const line = lineSimulation(system);
    line.play(deaf({ channel: 'FL', period: tone, gainDb: 0 }));
    line.next(rate);
    const level = 20 * Math.log10(rms(line.next(rate).samples));
    const expected = 10 * Math.log10(system.noise.pink ** 2 + system.noise.hiss ** 2);
    expectClose(level, expected, 1.5, 'pink noise of one second');
  });

  it('shows the reference speaker alone on the loopback', () => {
    const line = lineSimulation(quiet, { loopback: true });
    line.play(hear({ channel: 'FL', period: tone, gainDb: 0 }));
    line.next(rate);
    expectClose(rms(line.next(rate / 2).loopback ?? new Float32Array(1)), 0.5 / Math.SQRT2, 1e-3);
    line.play(hear({ channel: 'FR', period: tone, gainDb: 0 }));
    line.next(rate);
    expect(rms(line.next(rate / 2).loopback ?? new Float32Array(1))).toBe(0);
  });
});

describe('a line into the practice room', () => {
  async function opened(
    onBlock: (block: CapturedBlock) => void,
    signal = new AbortController().signal,
    options: Partial<PracticeOptions> = {},
  ): Promise<Line | Trouble> {
    const rig = practiceRig({ layout, seed, lineSpeed: 40, ...options });
    return rig.open({ signal, onBlock, onEnd: ({ sentence }) => expect.fail(sentence) });
  }

  it('gives blocks in order, with the level, until it is closed', async () => {
    const rig = practiceRig({ layout, seed, lineSpeed: 40 });
    const levels: number[] = [];
    rig.monitor(({ rmsDb }) => levels.push(rmsDb));
    const blocks: CapturedBlock[] = [];
    await new Promise<void>((resolve, reject) => {
      void rig
        .open({
          signal: new AbortController().signal,
          onEnd: ({ sentence }) => reject(new Error(sentence)),
          onBlock: (block) => void (blocks.push(block) === 20 && resolve()),
        })
        .then((line) => (isTrouble(line) ? reject(new Error(line.sentence)) : undefined));
    });
    const frames = blocks.map(({ frame }) => frame);
    expect(frames.slice(1).every((frame, k) => frame >= (frames[k] ?? 0) + 2400)).toBe(true);
    expect(blocks.every(({ loopback }) => loopback === null)).toBe(true);
    expect(levels.length).toBeGreaterThanOrEqual(19);
    expect(levels.every((level) => level < -60)).toBe(true);
  });

  it('is silent once closed or aborted, and may be closed twice', async () => {
    const abort = new AbortController();
    for (const end of [(line: Line) => line.close(), () => abort.abort()]) {
      let blocks = 0;
      let heard: () => void = () => undefined;
      const first = new Promise<void>((resolve) => (heard = resolve));
      const line = await opened(() => {
        blocks++;
        heard();
      }, abort.signal);
      if (isTrouble(line)) return expect.fail(line.sentence);
      await first;
      end(line);
      const atEnd = blocks;
      line.close();
      line.play({ channel: 'FL', period: tone, gainDb: 0 });
      await new Promise((resolve) => setTimeout(resolve, 30));
      expect(blocks).toBe(atEnd);
    }
  });

  it('does not open when it was stopped before', async () => {
    expect(await opened(() => undefined, AbortSignal.abort())).toMatchObject({
      trouble: 'stopped',
    });
  });

  it('refuses sounds that make no sense', async () => {
    const line = await opened(() => undefined);
    if (isTrouble(line)) return expect.fail(line.sentence);
    expect(() => line.play({ channel: 'FC', period: tone, gainDb: 0 })).toThrow(/FC/);
    expect(() => line.play({ channel: 'FL', period: tone, gainDb: 3 })).toThrow(/3/);
    expect(() => line.play({ channel: 'FL', period: new Float32Array(0), gainDb: 0 })).toThrow(/0/);
    expect(() => line.setGain(Number.NaN)).toThrow(/NaN/);
    line.close();
    expect(() => practiceRig({ layout, seed, lineSpeed: 0 })).toThrow(RangeError);
  });
});
