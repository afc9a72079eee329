import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findContradiction } from '../../../src/schema/find-contradiction';
import { parseSchedule } from '../../../src/schema/parse-schedule';
import { layoutFromName } from '../../../src/system/layout';
import { planTake } from '../../../src/take/plan-take';
import { scheduleId } from '../../../src/take/schedule-id';
import { scheduleTake } from '../../../src/take/schedule-take';
import type { Schedule } from '../../../src/take/schedule';
import { isTrouble } from '../../../src/trouble';

describe('parseSchedule', () => {
  it('brings every schedule back as it was saved', () => {
    for (const name of ['2.0', '5.1', '5.2.4', '9.4.6']) {
      for (const sampleRate of [44100, 48000, 96000]) {
        const schedule = takeOf(name, { sampleRate, sweepSeconds: 0.7 });
        expect(parseSchedule(JSON.stringify(schedule))).toEqual(schedule);
      }
    }
  });

  it('reads a take of version 1, in which nothing is replayed louder', () => {
    const take = takeOf('5.1');
    const segments = take.segments.map((segment) => ({ ...segment, replayGainDb: undefined }));
    const id = scheduleId({ ...take, version: 1, segments });
    const text = JSON.stringify({ ...take, version: 1, segments, id });
    expect(text).not.toContain('replayGainDb');
    expect(parseSchedule(text)).toEqual({ ...take, id });
  });

  it('brings a part of a take back, with averages and overlap', () => {
    const layout = layoutFromName('5.2.4');
    if (isTrouble(layout)) throw new Error(layout.sentence);
    const settings = { sweepSeconds: 4, averages: 2, pauseSeconds: 0.5, overlap: true, repeats: 0 };
    const plan = planTake(
      layout,
      settings,
      { outputs: 6, routes: {}, lfeOutput: 3 },
      {
        decaySeconds: 0.8,
      },
    );
    if (isTrouble(plan)) throw new Error(plan.sentence);
    for (const { schedule } of plan.parts) {
      expect(parseSchedule(JSON.stringify(schedule))).toEqual(schedule);
    }
  });

  it('leaves away fields it does not know', () => {
    const schedule = takeOf('5.1');
    expect(parseSchedule(JSON.stringify({ ...schedule, comment: 'second try' }))).toEqual(schedule);
  });

  it.each<[string, string, RegExp]>([
    ['an empty file', ' \n', /the file is empty/],
    ['what is no JSON', '{"format": take}', /it is not JSON \(.+\)/],
    ['a list', '[1]', /it holds a list where an object should be/],
    ['no object', '3', /it holds 3 where/],
    ['another format', '{"format":"leadline-readings"}', /"format" is "leadline-readings"/],
    ['no format', '{}', /"format" is missing/],
    [
      'another version',
      '{"format":"leadline-take","version":3}',
      /"version" is 3, and only 1 and 2 are known/,
    ],
  ])('refuses %s', (_what, text, finding) => refuses(text, finding));

  it.each<[string, (take: Mutable) => void, RegExp]>([
    [
      'a text for a number',
      (take) => (take.lengthSamples = '9'),
      /"lengthSamples" is "9" and should/,
    ],
    ['a missing field', (take) => delete take.mark, /"mark" is missing\. Use/],
    [
      'a field deep inside',
      (take) => (at(take, 1).end = 1.5),
      /"segments\[1\]\.end" is 1\.5 and should be a whole/,
    ],
    [
      'an unknown channel',
      (take) => (take.reference = 'XX'),
      /"reference" is "XX" and should be "FL" or/,
    ],
    [
      'a negative position',
      (take) => (at(take, 0).markStart = -4),
      /"segments\[0\]\.markStart" is -4 and should be at least 0/,
    ],
    [
      'a level above full scale',
      (take) => (take.peakDb = 6),
      /"peakDb" is 6 and should be at most 0/,
    ],
    [
      'a rate no recorder uses',
      (take) => (take.sampleRate = 8000),
      /"sampleRate" is 8000 and should be at least 44100/,
    ],
    ['no channels', (take) => (take.channels = []), /"channels" is a list and should be longer/],
  ])('refuses %s and says where', (_what, change, finding) => refuses(changed(change), finding));

  it.each<[string, (take: Mutable) => void, RegExp]>([
    ['a meaningless layout', (take) => (take.layout = '5.x'), /layout "5\.x" means nothing/],
    [
      'channels of another layout',
      (take) => (take.layout = '3.1'),
      /"channels" name SiL, and layout 3\.1 has FL/,
    ],
    [
      'a channel named twice',
      (take) => (take.channels = ['FL', 'FL', 'FC', 'Sub 1', 'SiL', 'SiR']),
      /names one channel twice/,
    ],
    [
      'a reference that is not there',
      (take) => (take.reference = 'BL'),
      /"reference" BL is not among/,
    ],
    ['a missing segment', (take) => take.segments?.pop(), /no segment plays SiR/],
    [
      'a missing mark',
      (take) => take.markStarts?.pop(),
      /"segments\[5\]" starts at \d+, where no mark opens/,
    ],
    [
      'a mark out of its place',
      (take) => (at(take, 2).markStart = 7),
      /mark 2 of "markStarts" opens no segment/,
    ],
    [
      'a sweep on its mark',
      (take) => (at(take, 3).sweepStart = at(take, 3).markStart),
      /overlaps its mark/,
    ],
    [
      'a sweep beyond its segment',
      (take) => (at(take, 0).end = at(take, 0).sweepStart + 5),
      /ends after its segment/,
    ],
    [
      'a take shorter than its marks',
      (take) => (take.lengthSamples = 1000),
      /ends at sample 1000, before its last mark/,
    ],
    [
      'silence over the wake-up noise',
      (take) => (take.silence = { start: 0, length: 1e6 }),
      /reaches into "wake"/,
    ],
    [
      'wake-up noise over the first mark',
      (take) => (part(take, 'wake').length = 5e6),
      /"wake" reaches into/,
    ],
    [
      'a mark shorter than its fades',
      (take) => (part(take, 'mark').fadeSamples = 9999),
      /"mark" is shorter than/,
    ],
    [
      'a mark beyond half the rate',
      (take) => (part(take, 'mark').endHz = 30000),
      /"mark" runs from 2000 to 30000/,
    ],
    [
      'a sweep beyond half the rate',
      (take) => (sweepOf(take, 1).endHz = 25000),
      /\[1\]" runs from .* to 25000/,
    ],
    ['a sweep that falls', (take) => (sweepOf(take, 1).startHz = 22000), /\[1\]" runs from 22000/],
    [
      'a sweep shorter than its fades',
      (take) => (sweepOf(take, 4).fadeInSamples = 1e6),
      /\[4\]" is shorter than/,
    ],
    ['a segment of a stranger', (take) => (at(take, 5).channel = 'BL'), /a segment plays BL/],
    ['a level changed by hand', (take) => (take.peakDb = -6), /changed after it was saved/],
    ['another id', (take) => (take.id = '0'.repeat(16)), /changed after it was saved/],
  ])('refuses %s as a contradiction', (_what, change, finding) =>
    refuses(changed(change), finding),
  );

  it('finds contradictions even when the id was made to fit', () => {
    const take = JSON.parse(changed((edited) => (at(edited, 0).end += 48000)));
    refuses(
      JSON.stringify({ ...take, id: scheduleId(take) }),
      /ends after the next mark has begun/,
    );
  });

  it('refuses sweeps of one speaker that overlap or are replayed unlike', () => {
    const layout = layoutFromName('2.0');
    if (isTrouble(layout)) return expect.fail(layout.sentence);
    const twice = scheduleTake(layout, { sweepSeconds: 0.5, averages: 2 });
    const [first, second, third] = twice.segments;
    if (!first || !second || !third) return expect.fail('too few segments');
    expect(findContradiction(twice)).toBeNull();
    const closer = { ...second, channel: first.channel, markStart: first.markStart };
    const close = [
      { ...first, end: second.end },
      { ...closer, sweepStart: first.sweepStart + 1 },
    ];
    const [opening = 0, , ...rest] = twice.markStarts;
    const merged = { ...twice, markStarts: [opening, ...rest] };
    expect(
      findContradiction({ ...merged, segments: [...close, ...twice.segments.slice(2)] }),
    ).toMatch(/begins while FL still plays/);
    const unlike = [first, second, { ...third, replayGainDb: 10 }, ...twice.segments.slice(3)];
    expect(findContradiction({ ...twice, segments: unlike })).toMatch(/"replayGainDb".*FL/);
  });

  it('never throws on arbitrary JSON', () => {
    const whole = takeOf('2.0');
    const damage = fc.record({
      key: fc.constantFrom(...Object.keys(whole)),
      value: fc.jsonValue(),
    });
    fc.assert(
      fc.property(fc.array(damage, { minLength: 1, maxLength: 3 }), (hits) => {
        const damaged = Object.fromEntries(hits.map(({ key, value }) => [key, value]));
        const result = parseSchedule(JSON.stringify({ ...whole, ...damaged }));
        return isTrouble(result) ? result.trouble === 'bad-file' : result.id === whole.id;
      }),
      { seed: 3, numRuns: 2000 },
    );
  });
});

type Mutable = Record<string, unknown> & {
  segments?: {
    channel: string;
    markStart: number;
    sweepStart: number;
    sweep: Record<string, number>;
    end: number;
  }[];
  wake?: Record<string, number>;
  mark?: Record<string, number>;
  markStarts?: number[];
};

function takeOf(name: string, options = {}): Schedule {
  const layout = layoutFromName(name);
  if (isTrouble(layout)) return expect.fail(layout.sentence);
  return scheduleTake(layout, options);
}

function changed(change: (take: Mutable) => unknown): string {
  const take: Mutable = JSON.parse(JSON.stringify(takeOf('5.1')));
  change(take);
  return JSON.stringify(take);
}

function at(take: Mutable, index: number) {
  return take.segments?.[index] ?? expect.fail(`no segment ${index}`);
}

function part(take: Mutable, name: 'wake' | 'mark'): Record<string, number> {
  return take[name] ?? expect.fail(`no ${name}`);
}

function sweepOf(take: Mutable, index: number): Record<string, number> {
  return at(take, index).sweep;
}

function refuses(text: string, finding: RegExp): void {
  const result = parseSchedule(text);
  expect(result).toMatchObject({ trouble: 'bad-file' });
  expect(isTrouble(result) && result.sentence).toMatch(finding);
  expect(isTrouble(result) && result.sentence).toMatch(/Use the take\.json/);
}
