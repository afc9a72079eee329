import { describe, expect, it } from 'vitest';
import type { ImpulseResponse } from '../../../dsp/response/impulse-response';
import { powerSpectrum } from '../../../dsp/response/power-spectrum';
import { readChannel } from '../../../src/reading/read-channel';
import { readLevel, type LevelFinding } from '../../../src/reading/read-level';
import { untouched } from '../../../src/reading/take-out-settings';
import { expectClose } from '../../close';
import { click, noiseAt } from './untold-gaps';
import { layoutNamed } from './wired-room';

function levelOf(
  ir: ImpulseResponse,
  noise: ImpulseResponse | null,
  silenceSeconds?: number,
): LevelFinding {
  const hiss = noise && powerSpectrum(noise);
  const found = readLevel({ ir, noise, heard: powerSpectrum(ir), hiss, silenceSeconds }, false);
  return found ?? expect.fail('no level');
}

/** One response in noise that has nothing to do with its tail. */
function inNoise(hiss: number, seed: number): ImpulseResponse {
  const [clear, noise] = [click(1, 0, 1), click(0, hiss, 9000 + seed)];
  return { ...clear, samples: clear.samples.map((value, n) => value + (noise.samples[n] ?? 0)) };
}

function widthOf({ levelInterval }: LevelFinding): number {
  return levelInterval ? levelInterval[1] - levelInterval[0] : Number.NaN;
}

/** The same response with nothing after so many seconds, as beside the next of two sweeps. */
function endedAt(ir: ImpulseResponse, seconds: number): ImpulseResponse {
  const samples = ir.samples.slice();
  samples.fill(0, Math.round(seconds * ir.sampleRate));
  return { ...ir, samples };
}

describe('readLevel', () => {
  it('gives an interval that more noise, and less silence, only widen', () => {
    const clear = levelOf(inNoise(0, 1), noiseAt(0));
    const hisses = [1e-5, 1e-4, 5e-4, 1e-3, 2e-3];
    const found = hisses.map((hiss) => levelOf(inNoise(hiss, 1), noiseAt(hiss)));
    // The true level lies within twice its halves all but once in a thousand times.
    for (const one of found) {
      expect(Math.abs(one.levelDb - clear.levelDb)).toBeLessThan(widthOf(one));
    }
    const widths = [clear, ...found].map(widthOf);
    expect(widths).toEqual([...widths].sort((a, b) => a - b));
    const [ir, noise] = [inNoise(1e-3, 1), noiseAt(1e-3)];
    expect(widthOf(levelOf(ir, noise, 0.5))).toBeGreaterThan(widthOf(levelOf(ir, noise, 2)));
    expect(levelOf(ir, noise, 4)).toEqual(levelOf(ir, noise));
  });

  it('takes off the noise of a response that ends early for as long as that lasts', () => {
    const hiss = 2e-3;
    const clear = levelOf(endedAt(inNoise(0, 1), 0.7), noiseAt(0));
    const found = [1, 2, 3, 4, 5, 6, 7, 8].map((seed) =>
      levelOf(endedAt(inNoise(hiss, seed), 0.7), noiseAt(hiss)),
    );
    for (const one of found) {
      expect(Math.abs(one.levelDb - clear.levelDb)).toBeLessThan(widthOf(one));
    }
    const mean = found.reduce((sum, { levelDb }) => sum + levelDb, 0) / found.length;
    // Taken off for 1.53 s instead of 0.7 s the noise would leave 0.3 dB less.
    expectClose(mean, clear.levelDb, 0.05);
  });

  it('has no interval where the noise is not known', () => {
    expect(levelOf(click(1, 1e-3, 1), null).levelInterval).toBeNull();
  });
});

describe('the level of a channel', () => {
  it('moves with its interval by the trim that is in force', () => {
    const channel = layoutNamed('2.0').channels[1] ?? expect.fail('no channel');
    const source = {
      channel,
      ir: click(1, 1e-3, 1),
      noise: noiseAt(1e-3),
      faults: [],
      spoilt: null,
      mendedHz: null,
      notes: [],
    };
    const frame = {
      reference: null,
      departure: null,
      referenceDistanceMetres: 2.4,
      metresPerSecond: 343.2,
    };
    const plain = readChannel(source, frame);
    const trimmed = readChannel({ ...source, inForce: { ...untouched, trimDb: -4 } }, frame);
    expectClose(trimmed.levelDb, (plain.levelDb ?? Number.NaN) + 4, 1e-9);
    expectClose(
      trimmed.levelInterval,
      plain.levelInterval?.map((end) => end + 4),
      1e-9,
    );
  });
});
