import { describe, expect, it } from 'vitest';
import type {
  Capture,
  CapturedBlock,
  Line,
  MicLevel,
  PlayProgress,
  Rig,
  RigAbilities,
} from '../../../src/rig/port';
import type { Schedule } from '../../../src/take/schedule';
import { isTrouble, type Trouble } from '../../../src/trouble';

/** A rig ready to play `schedule`, fresh for every assertion. */
export interface RigUnderTest {
  readonly rig: Rig;
  readonly schedule: Schedule;
  /**
   * 'capture' when the whole take must come back; 'trouble' for a rig whose world is broken on
   * purpose (no microphone, no recording): it must say so instead. An abort ends both alike.
   */
  readonly gives: 'capture' | 'trouble';
  /** 'line' when `open` must give one, 'sentence' when it must say why it cannot. */
  readonly opens: 'line' | 'sentence';
}

/**
 * What every rig keeps, asserted in one place. A rig that plays nothing itself (outputs 0) keeps it
 * with a capture brought back. What `describe` lists as unknown is not held against the capture.
 */
export function rigContract(name: string, makeRig: () => Promise<RigUnderTest>): void {
  describe(`the rig contract: ${name}`, () => {
    it('describes itself, or says in a sentence why it cannot', async () => {
      const { rig } = await makeRig();
      const abilities = await rig.describe();
      if (isTrouble(abilities)) return expectSentence(abilities);
      expect(abilities.kind).toBe(rig.kind);
      expect(abilities.simulated).toBe(rig.simulated);
      expect(abilities.name).not.toBe('');
      expect(Number.isInteger(abilities.outputs) && abilities.outputs >= 0).toBe(true);
      expect(Number.isInteger(abilities.inputs) && abilities.inputs >= 1).toBe(true);
      expect(abilities.sampleRate).toBeGreaterThanOrEqual(44100);
    });

    it('describes itself alike when asked twice', async () => {
      const { rig } = await makeRig();
      expect(await rig.describe()).toEqual(await rig.describe());
    });

    it('plays nothing when it was stopped before it began', async () => {
      const { rig, schedule } = await makeRig();
      const progress: PlayProgress[] = [];
      const result = await rig.play(schedule, {
        signal: AbortSignal.abort(),
        onProgress: (step) => progress.push(step),
      });
      expect(result).toMatchObject({ trouble: 'stopped' });
      expect(progress).toEqual([]);
    });

    it('ends at once when it is stopped while it runs, and is silent afterwards', async () => {
      const { rig, schedule, gives } = await makeRig();
      const abort = new AbortController();
      let stepsAfterwards = 0;
      const result = await rig.play(schedule, {
        signal: abort.signal,
        onProgress: () => {
          if (abort.signal.aborted) stepsAfterwards++;
          abort.abort();
        },
      });
      expect(isTrouble(result)).toBe(true);
      if (gives === 'capture') expect(result).toMatchObject({ trouble: 'stopped' });
      expect(stepsAfterwards).toBe(0);
    });

    it('can play again after it was stopped', async () => {
      const { rig, schedule, gives } = await makeRig();
      const abort = new AbortController();
      await rig.play(schedule, { signal: abort.signal, onProgress: () => abort.abort() });
      const result = await rig.play(schedule, { signal: new AbortController().signal });
      expect(isTrouble(result)).toBe(gives === 'trouble');
    });

    it('gives a capture that covers the take, as described, with progress that only grows', async () => {
      const { rig, schedule, gives } = await makeRig();
      const abilities = await rig.describe();
      const progress: PlayProgress[] = [];
      const result = await rig.play(schedule, {
        signal: new AbortController().signal,
        onProgress: (step) => progress.push(step),
      });
      expectProgress(progress, schedule);
      if (isTrouble(result)) {
        expect(gives, result.sentence).toBe('trouble');
        return expectSentence(result);
      }
      expect(gives).toBe('capture');
      expectCapture(result, rig, schedule);
      if (isTrouble(abilities)) expect.fail(`it played, yet said: ${abilities.sentence}`);
      expectAsDescribed(result, abilities);
      expect(progress.length).toBeGreaterThan(0);
    });

    lineContract(makeRig);

    it('lets go of a level listener, once or twice', async () => {
      const { rig, schedule } = await makeRig();
      let calls = 0;
      const leave = rig.monitor(() => calls++);
      leave();
      leave();
      const abort = new AbortController();
      await rig.play(schedule, { signal: abort.signal, onProgress: () => abort.abort() });
      expect(calls).toBe(0);
    });
  });
}

/** What every line keeps; for rigs whose takes last too long to be played here, alone. */
export function lineContract(makeRig: () => Promise<RigUnderTest>): void {
  it('opens a line that hears blocks in order, or says in a sentence why it cannot', async () => {
    const { rig, schedule, opens } = await makeRig();
    const levels: MicLevel[] = [];
    rig.monitor((level) => levels.push(level));
    const heard = await openLine(rig);
    if (isTrouble(heard.line)) {
      expect(opens, heard.line.sentence).toBe('sentence');
      return expectSentence(heard.line);
    }
    expect(opens).toBe('line');
    const { line, blocks } = heard;
    expect(line.sampleRate).toBeGreaterThanOrEqual(44100);
    expect(line.simulated).toBe(rig.simulated);
    expect(line.notes.some((note) => note.startsWith('microphone: '))).toBe(true);
    const channel = schedule.reference;
    line.play({ channel, period: tone(line.sampleRate), gainDb: -20 });
    await untilBlocks(heard, 4);
    line.setGain(-26);
    line.play(null);
    await untilBlocks(heard, 8);
    line.close();
    expect(blocks[0]?.frame).toBe(0);
    for (const [index, { frame, samples }] of blocks.entries()) {
      expect(samples.every((value) => Number.isFinite(value))).toBe(true);
      const next = blocks[index + 1];
      if (next) expect(next.frame).toBeGreaterThanOrEqual(frame + samples.length);
    }
    expect(levels.length).toBeGreaterThan(0);
  });

  it('hears nothing more of a line that was closed, once or twice, or stopped', async () => {
    const { rig, opens } = await makeRig();
    if (opens === 'sentence') return;
    for (const end of ['close', 'stop'] as const) {
      const heard = await openLine(rig);
      if (isTrouble(heard.line)) expect.fail(heard.line.sentence);
      await untilBlocks(heard, 1);
      if (end === 'stop') heard.stop();
      heard.line.close();
      heard.line.close();
      const count = heard.blocks.length;
      heard.line.play(null);
      heard.line.setGain(-10);
      await new Promise((resolve) => setTimeout(resolve, 300));
      expect(heard.blocks).toHaveLength(count);
      expect(heard.ends.length).toBeLessThanOrEqual(end === 'stop' ? 1 : 0);
    }
  });

  it('opens nothing when it was stopped before', async () => {
    const { rig, opens } = await makeRig();
    const heard = await openLine(rig, AbortSignal.abort());
    if (!isTrouble(heard.line)) expect.fail('it opened all the same');
    if (opens === 'line') expect(heard.line.trouble).toBe('stopped');
    expectSentence(heard.line);
    expect(heard.blocks).toEqual([]);
  });

  it('takes a gain above 0 dB, no number and an empty period for the caller’s mistakes', async () => {
    const { rig, schedule, opens } = await makeRig();
    if (opens === 'sentence') return;
    const { line } = await openLine(rig);
    if (isTrouble(line)) expect.fail(line.sentence);
    const channel = schedule.reference;
    const period = tone(line.sampleRate);
    for (const gainDb of [0.1, Number.NaN]) {
      expect(() => line.setGain(gainDb)).toThrow(RangeError);
      expect(() => line.play({ channel, period, gainDb })).toThrow(RangeError);
    }
    const empty = { channel, period: new Float32Array(0), gainDb: -20 };
    expect(() => line.play(empty)).toThrow(RangeError);
    line.close();
  });
}

interface HeardLine {
  readonly line: Line | Trouble;
  readonly blocks: readonly CapturedBlock[];
  readonly ends: readonly Trouble[];
  stop(): void;
}

async function openLine(rig: Rig, stopped?: AbortSignal): Promise<HeardLine> {
  const abort = new AbortController();
  const blocks: CapturedBlock[] = [];
  const ends: Trouble[] = [];
  const line = await rig.open({
    signal: stopped ?? abort.signal,
    onBlock: (block) => blocks.push(block),
    onEnd: (reason) => ends.push(reason),
  });
  return { line, blocks, ends, stop: () => abort.abort() };
}

async function untilBlocks({ blocks, ends }: HeardLine, count: number): Promise<void> {
  await expect
    .poll(() => blocks.length >= count || ends.length > 0, { timeout: 20_000 })
    .toBe(true);
  expect(ends).toEqual([]);
}

function tone(sampleRate: number): Float32Array {
  return Float32Array.from({ length: sampleRate / 10 }, (_, n) =>
    Math.sin((2 * Math.PI * 440 * n) / sampleRate),
  );
}

function expectSentence({ sentence }: Trouble): void {
  expect(sentence).toMatch(/^\p{Lu}.{15,}\.$/su);
}

function expectProgress(steps: readonly PlayProgress[], schedule: Schedule): void {
  const phases = ['starting', 'settling', 'playing', 'finishing'];
  const ranks = steps.map((step) => phases.indexOf(step.phase));
  expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
  expectGrowing(steps.map((step) => step.progress));
  expectGrowing(steps.map((step) => step.position));
  for (const { progress, secondsLeft, position } of steps) {
    expect(progress >= 0 && progress <= 1).toBe(true);
    expect(secondsLeft >= 0 && Number.isFinite(secondsLeft)).toBe(true);
    expect(position).toBeLessThanOrEqual(schedule.lengthSamples);
  }
}

function expectGrowing(values: readonly number[]): void {
  expect(values).toEqual([...values].sort((a, b) => a - b));
}

function expectCapture(capture: Capture, rig: Rig, schedule: Schedule): void {
  const { samples, sampleRate, startedAt, gaps } = capture;
  const marks = schedule.markStarts;
  const needed = (marks.at(-1) ?? 0) + schedule.mark.lengthSamples - (marks[0] ?? 0);
  expect(samples.length / sampleRate).toBeGreaterThan((0.999 * needed) / schedule.sampleRate);
  expect(samples.findIndex((sample) => !Number.isFinite(sample))).toBe(-1);
  expect(Number.isNaN(Date.parse(startedAt))).toBe(false);
  expect([capture.rig, capture.simulated]).toEqual([rig.kind, rig.simulated]);
  for (const gap of gaps) {
    expect(gap.samples).toBeGreaterThan(0);
    expect(gap.atSample >= 0 && gap.atSample < samples.length).toBe(true);
  }
}

function expectAsDescribed(capture: Capture, abilities: RigAbilities): void {
  if (abilities.unknown.includes('sampleRate')) return;
  expect(capture.sampleRate).toBe(abilities.sampleRate);
}
