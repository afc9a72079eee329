import { describe, expect, it } from 'vitest';
import { findDisturbances, type Disturbance } from '../../../dsp/disturbance/find-disturbances';
import { bandLevelDb } from '../../../dsp/level/band-level';
import { bandEdges, bandMidpoints } from '../../../dsp/level/bands';
import type { ImpulseResponse } from '../../../dsp/response/impulse-response';
import { captured, cleanSegment } from './segments';
import { bang, hum, rumble, voice, type Sound } from './sounds';

const mains = [0, 1, 2].map(cleanSegment);
const sub = cleanSegment(3);

function worst(found: readonly Disturbance[]): Disturbance | undefined {
  return found.toSorted((a, b) => b.errorDb - a.errorDb)[0];
}

/** Largest change of a third-octave between two responses. */
function moved(one: ImpulseResponse, other: ImpulseResponse, low: number, high: number): number {
  const changes = [...bandMidpoints(low, high, 3)].map((hz) => {
    const [from, to] = bandEdges(hz, 3);
    return Math.abs(bandLevelDb(one, from, to) - bandLevelDb(other, from, to));
  });
  return Math.max(...changes);
}

describe('disturbances of a segment', () => {
  it('raises no alarm in clean segments of all kinds and noises', () => {
    for (const [k, segment] of [...mains, sub, ...[4, 6, 7, 8].map(cleanSegment)].entries()) {
      for (const noiseDb of [-75, -65, -55, -45]) {
        expect(findDisturbances(captured(segment, 40 * k + noiseDb, noiseDb, null))).toEqual([]);
      }
    }
  });

  it.each<[Disturbance['kind'], Sound, number]>([
    ['bang', bang, -6],
    ['rumble', rumble, -30],
    ['hum', hum(50), -38],
    ['hum', hum(60), -38],
    ['voice', voice, -28],
  ])('finds and names a %s', (kind, sound, levelDb) => {
    for (const [k, segment] of mains.entries()) {
      const added = sound(segment.heard.length, k + 1).map((v) => v * 10 ** (levelDb / 20));
      const input = captured(segment, k, -65, added);
      const before = captured(segment, k, -65, null);
      const found = worst(findDisturbances(input));
      expect(moved(input.ir, before.ir, 20, 12_500)).toBeGreaterThan(1);
      expect(found?.kind).toBe(kind);
      expect(found?.errorDb).toBeGreaterThan(0.5);
    }
  });

  it('says when and in which band a bang was heard', () => {
    const [segment = sub] = mains;
    const added = bang(segment.heard.length, 5).map((v) => 0.1 * v);
    const start = added.findIndex((v) => v !== 0) / 48_000 - 0.17;
    const found = worst(findDisturbances(captured(segment, 5, -65, added)));
    expect(Math.abs((found?.fromSeconds ?? 9) - start)).toBeLessThan(0.25);
    expect((found?.highHz ?? 0) / (found?.lowHz ?? 1)).toBeGreaterThan(4);
  });

  it('judges how far the response moves: within a factor of two in most cases, rarely too little', () => {
    const ratios = mains.flatMap((segment, k) =>
      [-30, -25, -20].map((levelDb) => {
        const added = voice(segment.heard.length, 10 + k).map((v) => v * 10 ** (levelDb / 20));
        const input = captured(segment, k, -65, added);
        const truth = moved(input.ir, captured(segment, k, -65, null).ir, 40, 10_000);
        return (worst(findDisturbances(input))?.errorDb ?? 0) / truth;
      }),
    );
    expect(ratios.filter((ratio) => ratio < 0.5).length).toBeLessThan(ratios.length / 4);
    expect(ratios.filter((ratio) => ratio < 2).length).toBeGreaterThan(ratios.length / 2);
  });

  it('takes no hum for new that the silence already holds', () => {
    const [segment = sub] = mains;
    const added = hum(50)(segment.heard.length, 1).map((v) => 0.003 * v);
    const input = captured(segment, 1, -65, added);
    const steady = hum(50)(input.silence?.length ?? 0, 1);
    const silence = input.silence?.map((v, n) => v + 0.003 * (steady[n] ?? 0)) ?? null;
    expect(findDisturbances({ ...input, silence })).toEqual([]);
  });

  it('calls neither clipping nor a lost buffer a voice', () => {
    for (const [k, segment] of mains.entries()) {
      const peak = segment.heard.reduce((most, v) => Math.max(most, Math.abs(v)), 0);
      const clipped = segment.heard.map((v) => Math.max(-0.5 * peak, Math.min(0.5 * peak, v)));
      const lost = segment.heard.slice();
      lost.copyWithin(90_000, 90_128);
      for (const heard of [clipped, lost]) {
        const found = findDisturbances(captured({ ...segment, heard }, k, -65, null));
        expect(found.map(({ kind }) => kind)).not.toContain('voice');
      }
    }
  });

  it('refuses a segment that does not hold the whole sweep', () => {
    const input = captured(sub, 1, -65, null);
    expect(() => findDisturbances({ ...input, sweepAt: -1 })).toThrow(RangeError);
    const heard = input.heard.subarray(0, 100_000);
    expect(() => findDisturbances({ ...input, heard })).toThrow(RangeError);
  });
});
