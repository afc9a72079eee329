import { beforeAll, describe, expect, it } from 'vitest';
import { findSource } from '../../../src/inspect/find-source';
import type { InspectAnswer, InspectRequest, Inspector } from '../../../src/inspect/inspection';
import type { SessionBench } from '../../../src/session/session-bench';
import type { ChannelLabel } from '../../../src/system/channel';
import { isTrouble } from '../../../src/trouble';
import { makeBench } from '../session/make-bench';

let bench: SessionBench;
let inspector: Inspector;

beforeAll(async () => {
  ({ bench } = makeBench());
  await bench.startTake();
  inspector = bench.inspect();
});

function sourceOf(channel: ChannelLabel) {
  const { document } = bench.state;
  const source = findSource(document.takes, '2.0', document.position.id, channel);
  if (!source) throw new Error(`${channel} was not read`);
  return source;
}

async function ask<Request extends InspectRequest>(
  request: Request,
): Promise<Extract<InspectAnswer, { kind: Request['kind'] }>> {
  const answer = await inspector.ask(request);
  if (isTrouble(answer)) throw new Error(answer.sentence);
  return answer as Extract<InspectAnswer, { kind: Request['kind'] }>;
}

const whole = { kind: 'whole' } as const;
const finite = (values: ArrayLike<number>): boolean => Array.from(values).every(Number.isFinite);

describe('looking into the sound of a take', () => {
  it('gives responses of several speakers on one grid, and the noise far under them', async () => {
    const sources = [sourceOf('FL'), sourceOf('FR')];
    const { hz, curves } = await ask({
      kind: 'responses',
      sources,
      smoothing: '1/3',
      window: whole,
    });
    expect(curves.map(({ source }) => source)).toEqual(sources);
    const middle = hz.findIndex((f) => f >= 1000);
    for (const { power, noisePower, fromHz } of curves) {
      expect(finite(power)).toBe(true);
      expect(power).toHaveLength(hz.length);
      expect((power[middle] ?? 0) / (noisePower?.[middle] ?? Infinity)).toBeGreaterThan(1000);
      expect(fromHz).toBeNull();
    }
  });

  it('tells from where on a gate and a window by periods tell anything', async () => {
    const sources = [sourceOf('FL')];
    const gate = { kind: 'gate', milliseconds: 20 } as const;
    const gated = await ask({ kind: 'responses', sources, smoothing: '1/24', window: gate });
    // By hand: one period in 20 ms is 50 Hz.
    expect(gated.curves[0]?.fromHz).toBeCloseTo(50, 6);
    const cycles = { kind: 'cycles', cycles: 6 } as const;
    const short = await ask({ kind: 'responses', sources, smoothing: 'none', window: cycles });
    // The response is told for 1.36 s after zero delay: six periods of some 4.5 Hz.
    expect(short.curves[0]?.fromHz).toBeGreaterThan(4);
    expect(short.curves[0]?.fromHz).toBeLessThan(5);
    // A short look at the treble sees the speaker without the room's ripple.
    const ripple = ({ hz, curves }: typeof gated): number => {
      const db = Array.from(curves[0]?.power ?? [], (power) => 10 * Math.log10(power));
      const inside = db.filter((_, k) => (hz[k] ?? 0) > 2000 && (hz[k] ?? 0) < 8000);
      return inside.slice(1).reduce((sum, value, k) => sum + Math.abs(value - (inside[k] ?? 0)), 0);
    };
    const long = await ask({ kind: 'responses', sources, smoothing: 'none', window: whole });
    expect(ripple(short)).toBeLessThan(0.2 * ripple(long));
  });

  it('gives time from the arrival on: energy and step at their largest there', async () => {
    const { curves } = await ask({ kind: 'time', sources: [sourceOf('FL')] });
    const [first] = curves;
    if (!first) throw new Error('no curve came back');
    const { energy, step } = first;
    const strongest = energy.db.indexOf(Math.max(...energy.db));
    expect(energy.db[strongest]).toBe(0);
    expect(Math.abs(energy.seconds[strongest] ?? 1)).toBeLessThan(0.002);
    expect(Math.max(...step.level.map(Math.abs))).toBe(1);
  });

  it('gives a group delay after the arrival, and phase only where the speaker plays', async () => {
    const { hz, curves } = await ask({ kind: 'phase', sources: [sourceOf('FL')] });
    const [curve] = curves;
    const told = (curve?.groupDelay ?? []).flatMap((seconds, k) =>
      seconds !== null && (hz[k] ?? 0) > 3000 && (hz[k] ?? 0) < 12_000 ? [seconds] : [],
    );
    const middle = told.toSorted((a, b) => a - b)[told.length >> 1] ?? Number.NaN;
    // With its room, the treble comes spread over a few hundredths of a second, none of it early.
    expect(middle).toBeGreaterThan(0);
    expect(middle).toBeLessThan(0.05);
    expect(told.length).toBeGreaterThan(40);
    for (const [k, degrees] of (curve?.excessPhase ?? []).entries()) {
      expect(degrees === null).toBe(curve?.groupDelay[k] === null);
    }
  });

  it('gives decay by octave, and says what the Schroeder frequency lacks', async () => {
    const source = sourceOf('FL');
    const { bands, mid, schroeder } = await ask({ kind: 'decay', source, volume: null });
    expect(bands.length).toBeGreaterThan(8);
    expect(mid.t20.seconds).toBeGreaterThan(0.1);
    expect(mid.t20.seconds).toBeLessThan(1);
    expect(schroeder).toMatchObject({
      hz: null,
      sentence: expect.stringMatching(/size on the plan/),
    });
    const told = await ask({ kind: 'decay', source, volume: 50 });
    // Schroeder 1962: 2000 √(T/V).
    const expected = 2000 * Math.sqrt((told.mid.t20.seconds ?? Number.NaN) / 50);
    expect(told.schroeder.hz).toBeCloseTo(expected, 6);
  });

  it('gives the picture of the bass, at most 0 dB, and modes inside its range', async () => {
    const { picture, modes } = await ask({ kind: 'bass', source: sourceOf('FL') });
    expect(picture.db).toHaveLength(picture.hz.length * picture.seconds.length);
    expect(finite(picture.db)).toBe(true);
    expect(Math.max(...picture.db)).toBeCloseTo(0, 9);
    for (const { hz, seconds, sentence } of modes) {
      expect(hz).toBeGreaterThan(20);
      expect(hz).toBeLessThan(200);
      expect(seconds === null).toBe(sentence !== null);
    }
  });

  it('gives the impulse response, with the arrivals apart as they were read', async () => {
    const arrivals: number[] = [];
    for (const channel of ['FL', 'FR'] as const) {
      const { ir, arrivalSeconds } = await ask({ kind: 'impulse', source: sourceOf(channel) });
      expect(finite(ir.samples)).toBe(true);
      arrivals.push(arrivalSeconds ?? Number.NaN);
    }
    const read = bench.state.readings?.channels.find(({ channel }) => channel === 'FR');
    const [left = 0, right = 0] = arrivals;
    expect(right - left).toBeCloseTo(read?.arrivalSeconds ?? Number.NaN, 9);
  });

  it('says so when the sound of a take is gone', async () => {
    const source = { takeId: 'nobody', channel: 'FL' } as const;
    const answer = await inspector.ask({ kind: 'bass', source });
    expect(answer).toMatchObject({ sentence: expect.stringMatching(/no longer in this browser/) });
  });
});
