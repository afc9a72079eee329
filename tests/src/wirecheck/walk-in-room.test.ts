import { describe, expect, it } from 'vitest';
import { renderCapture } from '../../../src/rig/practice-capture';
import { systemIn } from '../../../src/rig/practice-system';
import type { PracticeFaults } from '../../../src/rig/practice-system';
import { layoutFromName } from '../../../src/system/layout';
import { isTrouble } from '../../../src/trouble';
import { layOutStop } from '../../../src/wirecheck/lay-out-stop';
import { readStop } from '../../../src/wirecheck/read-stop';
import { solveWalk } from '../../../src/wirecheck/solve-walk';
import { plainFindings } from './plain-finding';
import { walkRoom } from './walk-room';

const named = layoutFromName('2.1.2');
if (isTrouble(named)) throw new Error(named.sentence);
const layout = named;

async function found(faults: PracticeFaults): Promise<string[]> {
  return plainFindings(solveWalk(await walkRoom(layout, 4, faults), layout).findings);
}

describe('a walk through a practice room', () => {
  it('finds nothing wrong where nothing is', async () => {
    expect(await found({})).toEqual([]);
  });

  it('names a round of three and an inverted speaker', async () => {
    const wiring = { FL: ['FR'], FR: ['TpFL'], TpFL: ['FL'] } as const;
    expect(await found({ wiring, inverted: ['TpFR'] })).toEqual([
      'exchanged FL FR TpFL',
      'inverted TpFR',
    ]);
  });
});

describe('a stop', () => {
  const schedule = layOutStop(layout);
  const quiet = Float32Array.from(
    { length: schedule.lengthSamples + 20_000 },
    (_, n) => 1e-4 * Math.sin(12.9898 * n * n),
  );

  it('sounds every channel in order, the first two once more, with nothing that depends on one of them', () => {
    expect(schedule.segments.map(({ channel }) => channel)).toEqual([
      ...schedule.channels,
      ...schedule.channels.slice(0, 2),
    ]);
    expect(schedule.markStarts).toEqual([]);
    const ends = schedule.segments.map(({ sweepStart, sweep }) => sweepStart + sweep.lengthSamples);
    for (const [at, { sweepStart }] of schedule.segments.entries()) {
      expect(sweepStart).toBeGreaterThan(ends[at - 1] ?? 0);
    }
    expect(schedule.lengthSamples / schedule.sampleRate).toBeLessThan(8);
  });

  it.each([
    ['is silent', quiet, [], 'Nothing of this stop was heard'],
    ['lost audio', quiet, [{ atSample: 5, samples: 128 }], 'lost audio'],
    ['clipped', quiet.map((v) => Math.max(-0.00009, Math.min(0.00009, v))), [], 'clipped'],
  ])('that %s says what to do', (_, samples, gaps, words) => {
    const read = readStop(schedule, { samples, sampleRate: 48_000, gaps });
    expect(isTrouble(read) && read.sentence).toContain(words);
  });

  it.each([480, 2048])('that lost %i frames unnoticed on the way says so', async (lost) => {
    const room = { layout, seed: 4, seat: 0, hold: 'FL', faults: {}, loopback: false } as const;
    const whole = await renderCapture(systemIn(room), schedule);
    if (!whole) throw new Error('the practice room gave no capture');
    const at = schedule.segments[3]?.sweepStart ?? 0;
    const samples = new Float32Array(whole.length - lost);
    samples.set(whole.subarray(0, at));
    samples.set(whole.subarray(at + lost), at);
    const read = readStop(schedule, { samples, sampleRate: 48_000, gaps: [] });
    expect(isTrouble(read) && read.sentence).toContain('lost audio');
    expect(isTrouble(readStop(schedule, { samples: whole, sampleRate: 48_000, gaps: [] }))).toBe(
      false,
    );
  });

  it('is refused at another rate', () => {
    expect(() => readStop(schedule, { samples: quiet, sampleRate: 44_100, gaps: [] })).toThrow(
      RangeError,
    );
  });
});
