import { describe, expect, it } from 'vitest';
import type { Capture, PlayProgress, Rig, RigAbilities } from '../../../src/rig/port';
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
