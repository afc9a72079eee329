import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ChannelLabel, Layout } from '../../../src/system/channel';
import { layoutChoices, layoutFromName } from '../../../src/system/layout';
import { planTake, type PlanOptions } from '../../../src/take/plan-take';
import { renderChannel } from '../../../src/take/render';
import type { Schedule } from '../../../src/take/schedule';
import type { Routing, TakePlan, TakeSettings } from '../../../src/take/take-plan';
import { isTrouble } from '../../../src/trouble';

function layout(name: string): Layout {
  const found = layoutFromName(name);
  if (isTrouble(found)) throw new Error(found.sentence);
  return found;
}

const plain: TakeSettings = {
  sweepSeconds: 1,
  averages: 1,
  pauseSeconds: 0,
  overlap: false,
  repeats: 0,
};

function plan(
  name: string,
  routing: Routing | null,
  settings: Partial<TakeSettings> = {},
  options: PlanOptions = {},
): TakePlan {
  const found = planTake(layout(name), { ...plain, ...settings }, routing, options);
  if (isTrouble(found)) throw new Error(found.sentence);
  return found;
}

const outputs = (count: number, more: Partial<Routing> = {}): Routing => ({
  outputs: count,
  routes: {},
  lfeOutput: null,
  ...more,
});

const names = fc
  .tuple(
    fc.constantFrom(...layoutChoices.beds),
    fc.constantFrom(...layoutChoices.subs),
    fc.constantFrom(...layoutChoices.heights),
  )
  .map(([bed, subs, heights]) => `${bed}.${subs}.${heights}`);

const settings = fc.record({
  sweepSeconds: fc.constantFrom(0.5, 1, 5),
  averages: fc.integer({ min: 1, max: 3 }),
  pauseSeconds: fc.constantFrom(0, 0.5),
  overlap: fc.boolean(),
  repeats: fc.constant(0),
});

/**
 * Nothing leaves the take or its segment, no mark is played over, sweeps keep their spacing: the
 * decay and L ln 5, where L is the sweep's length over the logarithm of its range (Majdak 2007).
 */
function expectSound(schedule: Schedule, decaySeconds: number): void {
  const { markStarts, mark, segments, sampleRate, lengthSamples } = schedule;
  let before = -Infinity;
  let bundle = -1;
  let range = '';
  for (const { markStart, sweepStart, sweep, end } of segments) {
    const opened = markStarts.indexOf(markStart);
    expect(opened).toBeGreaterThanOrEqual(0);
    expect(sweepStart).toBeGreaterThanOrEqual(markStart + mark.lengthSamples);
    expect(end).toBeLessThanOrEqual(markStarts[opened + 1] ?? 0);
    expect(end).toBeGreaterThanOrEqual(sweepStart + sweep.lengthSamples + sampleRate);
    if (opened === bundle) {
      const rate = sweep.lengthSamples / Math.log(sweep.endHz / sweep.startHz);
      const closest = decaySeconds * sampleRate + rate * Math.log(5);
      expect(sweepStart - before).toBeGreaterThanOrEqual(closest - sampleRate / 1000);
      expect(`${sweep.startHz} ${sweep.endHz}`).toBe(range);
    }
    range = `${sweep.startHz} ${sweep.endHz}`;
    bundle = opened;
    before = sweepStart;
  }
  expect(lengthSamples).toBeGreaterThan((markStarts.at(-1) ?? 0) + mark.lengthSamples);
}

describe('the plan of a take', () => {
  it('sweeps every speaker as often as asked, on any number of outputs, in sound parts', () => {
    fc.assert(
      fc.property(names, settings, fc.integer({ min: 1, max: 20 }), (name, asked, count) => {
        const { parts } = plan(name, outputs(count), asked, { decaySeconds: 0.9 });
        const swept = new Map<ChannelLabel, number>();
        for (const { schedule, routes } of parts) {
          expectSound(schedule, 0.9);
          expect(schedule.segments.map(({ channel }) => channel)).toContain(schedule.reference);
          const used = schedule.channels.map((label) => routes[label] ?? -1);
          expect(new Set(used).size).toBe(used.length);
          expect(Math.max(...used)).toBeLessThan(count);
          for (const { channel } of schedule.segments) {
            swept.set(channel, (swept.get(channel) ?? 0) + 1);
          }
        }
        for (const { label } of layout(name).channels) {
          const times = label === 'FL' && count > 1 ? parts.length : 1;
          expect(swept.get(label)).toBe(asked.averages * times);
        }
      }),
      { numRuns: 80 },
    );
  });

  it('needs two takes and four moves for 12 speakers on 8 outputs, and leaves the reference', () => {
    const { parts } = plan('7.1.4', outputs(8));
    expect(parts.map(({ moves }) => moves.length)).toEqual([0, 4]);
    expect(parts[0]?.schedule.channels).toHaveLength(8);
    expect(parts[1]?.schedule.channels).toEqual(['FL', 'TpFL', 'TpFR', 'TpBL', 'TpBR']);
    expect(parts[1]?.moves.map(({ from }) => from)).toEqual(['FR', 'FC', 'BL', 'BR']);
    expect(parts[1]?.routes['FL']).toBe(0);
  });

  it('probes subs on one output one after the other, by their switches', () => {
    const routes = { 'Sub 1': 3, 'Sub 2': 3 };
    const { parts } = plan('5.2', outputs(8, { routes, lfeOutput: 3 }));
    expect(parts).toHaveLength(2);
    expect(parts[0]).toMatchObject({ moves: [], switchOff: ['Sub 2'], switchOn: [] });
    expect(parts[1]).toMatchObject({ moves: [], switchOff: ['Sub 1'], switchOn: ['Sub 2'] });
    expect(parts[1]?.schedule.channels).toEqual(['FL', 'Sub 2']);
  });

  it('plays 10 dB less into LFE, which the processor replays 10 dB louder', () => {
    const one = plan('5.1', outputs(8, { lfeOutput: 3 })).parts[0]?.schedule;
    const other = plan('5.1', outputs(8)).parts[0]?.schedule;
    if (!one || !other) throw new Error('no part');
    expect(one.segments.map(({ replayGainDb }) => replayGainDb)).toEqual([0, 0, 0, 10, 0, 0]);
    const peak = (schedule: Schedule, channel: ChannelLabel): number =>
      renderChannel(schedule, channel).reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    expect(20 * Math.log10(peak(one, 'Sub 1') / peak(other, 'Sub 1'))).toBeCloseTo(-10, 3);
    expect(peak(one, 'FC')).toBe(peak(other, 'FC'));
  });

  it('plays every sub 10 dB less where all are reached through LFE, on any outputs', () => {
    for (const routing of [null, outputs(8)]) {
      const { parts } = plan('5.2', routing, {}, { throughLfe: true });
      const segments = parts.flatMap(({ schedule }) => schedule.segments);
      for (const { channel, replayGainDb } of segments) {
        expect(replayGainDb).toBe(channel.startsWith('Sub') ? 10 : 0);
      }
    }
  });

  it('puts subs without an output of their own on the one that is replayed as LFE', () => {
    const { parts } = plan('5.2', outputs(8, { lfeOutput: 3 }));
    expect(parts.map(({ routes }) => [routes['Sub 1'], routes['Sub 2']])).toEqual([
      [3, undefined],
      [undefined, 3],
    ]);
  });

  describe('through a processor, which has one LFE for all subs', () => {
    const proving = { throughLfe: true } as const;
    const swept = ({ parts }: TakePlan) =>
      parts.map(({ schedule }) => schedule.segments.map(({ channel }) => channel));

    it('plays each sub alone, then the mains while all subs play their bass', () => {
      const found = plan('3.2', outputs(8), {}, proving);
      expect(swept(found)).toEqual([
        ['FL', 'Sub 1'],
        ['FL', 'Sub 2'],
        ['FL', 'FR', 'FC'],
      ]);
      expect(found.parts.map(({ switchOff, allOn }) => [switchOff, allOn ?? []])).toEqual([
        [['Sub 2'], []],
        [['Sub 1'], []],
        [[], ['Sub 1', 'Sub 2']],
      ]);
      expect(found.parts.map(({ routes }) => routes['Sub 1'] ?? routes['Sub 2'])).toEqual([
        3,
        3,
        undefined,
      ]);
    });

    it('needs no part more for one sub, nor for mains alone', () => {
      expect(swept(plan('2.1', outputs(8), {}, proving))).toEqual([['FL', 'FR', 'Sub 1']]);
      const again = plan('3.2', outputs(8), {}, { ...proving, channels: ['FC'] });
      expect(swept(again)).toEqual([['FL', 'FC']]);
      expect(again.parts[0]?.allOn).toEqual(['Sub 1', 'Sub 2']);
    });

    it('repeats the reference where the mains are, and a sub alone', () => {
      const repeat = (label: ChannelLabel) =>
        swept(plan('3.2', outputs(8), {}, { ...proving, channels: [label] }));
      expect(repeat('FL')).toEqual([['FL']]);
      expect(repeat('Sub 2')).toEqual([['FL', 'Sub 2']]);
    });
  });

  it('repeats a few speakers where the whole plan has them, with the reference', () => {
    const whole = plan('7.1.4', outputs(8));
    const again = plan('7.1.4', outputs(8), {}, { channels: ['TpBL', 'FC'], attempt: 1 });
    expect(again.parts.map(({ schedule }) => schedule.channels)).toEqual([
      ['FL', 'FC'],
      ['FL', 'TpBL'],
    ]);
    expect(again.parts[1]?.routes['TpBL']).toBe(whole.parts[1]?.routes['TpBL']);
    expect(again.parts[1]?.moves).toHaveLength(1);
  });

  it('repeats speakers of a part with the plugs as the part has them', () => {
    const routing = outputs(8);
    const { parts } = plan('9.1.6', routing);
    for (const { routes, schedule } of parts) {
      const channels = schedule.channels.slice(1, 3);
      const again = plan('9.1.6', { ...routing, routes }, {}, { channels, attempt: 1 });
      expect(again.parts).toHaveLength(1);
      const [part] = again.parts;
      expect(part?.moves).toEqual([]);
      for (const channel of [...channels, 'FL'] as const) {
        expect(part?.routes[channel]).toBe(routes[channel]);
      }
    }
  });

  it('is the same plan for the same wishes, and another for every other wish', () => {
    const idOf = (more: Partial<TakeSettings>, options: PlanOptions = {}): string =>
      plan('5.1', null, more, options).parts[0]?.schedule.id ?? '';
    const wishes: [Partial<TakeSettings>, PlanOptions?][] = [
      [{}],
      [{}, { attempt: 1 }],
      [{ averages: 2 }],
      [{ pauseSeconds: 0.5 }],
      [{ overlap: true }, { decaySeconds: 0.5 }],
      [{ overlap: true }, { decaySeconds: 0.6 }],
      [{}, { channels: ['FC'] }],
    ];
    expect(new Set(wishes.map(([more, options]) => idOf(more, options))).size).toBe(wishes.length);
    for (const [more, options] of wishes) {
      expect(idOf(more, options)).toBe(idOf({ ...more }, options && { ...options }));
    }
    expect(idOf({ overlap: true })).toBe(idOf({}));
  });

  it('refuses settings out of their range', () => {
    for (const more of [{ averages: 1.5 }, { averages: 9 }, { pauseSeconds: -1 }]) {
      expect(() => plan('5.1', null, more)).toThrow(RangeError);
    }
    expect(() => plan('5.1', null, {}, { decaySeconds: Number.NaN })).toThrow(RangeError);
  });

  it('spaces the marks of every attempt differently', () => {
    const gaps = [0, 1, 2, 3].map((attempt) => {
      const marks = plan('5.1', null, {}, { attempt }).parts[0]?.schedule.markStarts ?? [];
      return marks
        .slice(1)
        .map((at, k) => at - (marks[k] ?? 0))
        .join();
    });
    expect(new Set(gaps).size).toBe(4);
  });

  it('makes a long take much shorter by overlap', () => {
    const long = { sweepSeconds: 8 };
    const seconds = (overlap: boolean): number => {
      const options = { decaySeconds: 1 };
      const { schedule } = plan('7.2.4', null, { ...long, overlap }, options).parts[0] ?? {};
      return (schedule?.lengthSamples ?? 0) / 48000;
    };
    expect(seconds(true)).toBeLessThan(0.6 * seconds(false));
  });

  it('gives every speaker of a single output a part of its own, as its own reference', () => {
    const { parts } = plan('2.1', outputs(1));
    expect(parts.map(({ schedule }) => schedule.channels)).toEqual([['FL'], ['FR'], ['Sub 1']]);
    expect(parts.map(({ schedule }) => schedule.reference)).toEqual(['FL', 'FR', 'Sub 1']);
    expect(parts[2]?.moves).toEqual([{ output: 0, from: 'FR', to: 'Sub 1' }]);
  });

  it('says what is wrong with an output that is not there, or that the reference needs', () => {
    const refused = (routing: Routing): string => {
      const answer = planTake(layout('5.1'), plain, routing);
      return isTrouble(answer) ? answer.sentence : '';
    };
    expect(refused(outputs(2, { routes: { FC: 6 } }))).toMatch(/FC is on output 7.*2 channels/);
    expect(refused(outputs(8, { routes: { FL: 0, FR: 0 } }))).toMatch(/needs an output of its own/);
    expect(refused(outputs(0))).toMatch(/no channel to play on/);
  });
});
