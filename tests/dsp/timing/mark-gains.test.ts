import { describe, expect, it } from 'vitest';
import { gainSteps } from '../../../dsp/timing/gain-steps';
import { findMarks } from '../../../dsp/timing/find-marks';
import { markGains, type MarkGain } from '../../../dsp/timing/mark-gains';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { expectClose } from '../../close';
import { captureTake, makeRoom, makeTake, truePosition } from './synthetic-take';

const options = { snrDb: 30, skewPpm: 37, latencySeconds: 0.4 };
const room = makeRoom({ delaySeconds: 0.008, t60: 0.3, seed: 4 });

/** A short take with its gain changed by `db` from just before mark `from` on. */
function capturedWithStep(
  seed: number,
  from: number,
  db: number,
  channels = 6,
): (MarkGain | null)[] {
  const take = makeTake({
    channels,
    seed,
    sweepSamples: 2 ** 12,
    tailSeconds: 0.3,
    leadSeconds: 0.4,
  });
  const setup = { ...options, seed };
  const capture = captureTake(take, [room], setup);
  const at = Math.round(truePosition(take, setup, (take.markStarts[from] ?? 0) - 4800));
  for (let n = Math.max(0, at); n < capture.length; n++) {
    capture[n] = (capture[n] ?? 0) * 10 ** (db / 20);
  }
  const finding = findMarks(capture, take.rate, take.mark, take.markStarts);
  return finding ? markGains(capture, finding, take.mark) : [];
}

/** Gains of a clean take whose noise is that of `sigmaDb`. */
function drawGains(seed: number, count: number, sigmaDb: number): MarkGain[] {
  const normal = gaussian(seededRandom(seed));
  return Array.from({ length: count }, () => ({
    db: sigmaDb * normal(),
    sigmaDb,
    disturbed: false,
  }));
}

describe('level of marks', () => {
  it('reads a step of the gain from the marks, and none before it', () => {
    const gains = capturedWithStep(3, 4, -6);
    expectClose(
      gains.map((gain) => gain?.db),
      [0, 0, 0, 0, -6, -6, -6],
      0.05,
    );
    for (const gain of gains) expect(gain?.sigmaDb).toBeLessThan(0.05);
  });

  it('finds steps of 6 and 0.5 dB at any mark, 30 dB above the noise', () => {
    for (const [seed, from] of [1, 2, 3, 4, 5, 6].entries()) {
      for (const db of [-6, 6, 0.5, -0.5]) {
        const steps = gainSteps(capturedWithStep(seed + 20, from, db));
        expect(steps.map(({ afterMark, beforeMark }) => [afterMark, beforeMark])).toEqual([
          [from - 1, from],
        ]);
        expectClose(steps[0]?.db, db, 0.06);
      }
    }
  });

  it('finds no step in clean takes', () => {
    for (let seed = 0; seed < 12; seed++)
      expect(gainSteps(capturedWithStep(seed, 1, 0, 4))).toEqual([]);
    for (let seed = 0; seed < 500; seed++) {
      const sigmaDb = 0.01 * (1 + (seed % 20));
      expect(gainSteps(drawGains(seed, 3 + (seed % 14), sigmaDb))).toEqual([]);
    }
  });

  it('finds two steps, up and down again', () => {
    const gains = drawGains(7, 12, 0.02).map((gain, k) =>
      k >= 3 && k < 8 ? { ...gain, db: gain.db + 3 } : gain,
    );
    const steps = gainSteps(gains);
    expect(steps.map(({ beforeMark }) => beforeMark)).toEqual([3, 8]);
    expectClose(
      steps.map(({ db }) => db),
      [3, -3],
      0.1,
    );
  });

  it('takes a single mark that differs for no step, nor one that was talked over', () => {
    const alone = drawGains(8, 9, 0.02).map((gain, k) =>
      k === 4 ? { ...gain, db: gain.db + 1 } : gain,
    );
    expect(gainSteps(alone)).toEqual([]);
    const last = drawGains(9, 9, 0.02).map((gain, k) =>
      k === 8 ? { ...gain, db: gain.db + 1, disturbed: true } : gain,
    );
    expect(gainSteps(last)).toEqual([]);
  });

  it('says which mark was talked over', () => {
    const take = makeTake({
      channels: 5,
      seed: 2,
      sweepSamples: 2 ** 12,
      tailSeconds: 0.3,
      leadSeconds: 0.4,
    });
    const capture = captureTake(take, [room], options);
    const at = Math.round(truePosition(take, options, take.markStarts[3] ?? 0));
    const peak = capture
      .subarray(at, at + 3000)
      .reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    const normal = gaussian(seededRandom(5));
    for (let n = at - 2000; n < at + 6000; n++)
      capture[n] = (capture[n] ?? 0) + 0.2 * peak * normal();
    const finding = findMarks(capture, take.rate, take.mark, take.markStarts);
    const gains = finding ? markGains(capture, finding, take.mark) : [];
    expect(gains.map((gain) => gain?.disturbed)).toEqual([false, false, false, true, false, false]);
    expect(gainSteps(gains)).toEqual([]);
  });
});
