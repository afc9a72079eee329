import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layoutChoices, layoutFromName } from '../../../src/system/layout';
import type { Layout } from '../../../src/system/channel';
import { scheduleId } from '../../../src/take/schedule-id';
import { scheduleTake } from '../../../src/take/schedule-take';
import { isTrouble } from '../../../src/trouble';

function layout(name: string): Layout {
  const found = layoutFromName(name);
  if (isTrouble(found)) throw new Error(found.sentence);
  return found;
}

const names = fc
  .tuple(
    fc.constantFrom(...layoutChoices.beds),
    fc.constantFrom(...layoutChoices.subs),
    fc.constantFrom(...layoutChoices.heights),
  )
  .map(([bed, subs, heights]) => `${bed}.${subs}.${heights}`);

describe('scheduleTake', () => {
  it('lays out every channel once, in order, and lets nothing overlap', () => {
    fc.assert(
      fc.property(names, (name) => {
        const declared = layout(name);
        const take = scheduleTake(declared);
        expect(take.segments.map(({ channel }) => channel)).toEqual(
          declared.channels.map(({ label }) => label),
        );
        let at = take.wake.start + take.wake.length;
        for (const segment of take.segments) {
          expect(segment.markStart).toBeGreaterThanOrEqual(at);
          expect(segment.sweepStart).toBeGreaterThan(segment.markStart + take.mark.lengthSamples);
          at = segment.sweepStart + segment.sweep.lengthSamples;
          expect(segment.end - at).toBeGreaterThanOrEqual(take.sampleRate);
          at = segment.end;
        }
        expect(take.markStarts).toEqual([...take.segments.map((one) => one.markStart), at]);
        expect(take.lengthSamples).toBeGreaterThan(at + take.mark.lengthSamples);
      }),
      { numRuns: 60 },
    );
  });

  it('keeps sweeps above 500 Hz off the subs', () => {
    for (const { channel, sweep } of scheduleTake(layout('7.2.4')).segments) {
      expect(sweep.endHz).toBe(channel.startsWith('Sub') ? 500 : 20000);
      expect(sweep.startHz).toBeLessThanOrEqual(10);
    }
  });

  it('spaces the marks of different takes differently, and of the same take alike', () => {
    const gaps = (name: string, options = {}): string => {
      const { markStarts } = scheduleTake(layout(name), options);
      return markStarts
        .slice(1)
        .map((at, k) => at - (markStarts[k] ?? 0))
        .join();
    };
    const takes = ['5.1', '5.0.2', '6.0', '4.2'].map((name) => gaps(name));
    takes.push(gaps('5.1', { peakDb: -20 }), gaps('5.1', { sweepSeconds: 2 }));
    expect(new Set(takes).size).toBe(takes.length);
    expect(gaps('5.1')).toBe(takes[0]);
  });

  it('is identified by all that is in it', () => {
    const take = scheduleTake(layout('3.1'));
    expect(scheduleId({ ...take })).toBe(take.id);
    expect(scheduleId({ ...take, peakDb: -13 })).not.toBe(take.id);
    const [first, ...rest] = take.segments;
    if (!first) throw new Error('no segment');
    const moved = { ...take, segments: [{ ...first, sweepStart: first.sweepStart + 1 }, ...rest] };
    expect(scheduleId(moved)).not.toBe(take.id);
  });

  it('survives a round trip through JSON with its id', () => {
    const take = scheduleTake(layout('9.4.6'));
    const back: unknown = JSON.parse(JSON.stringify(take));
    expect(back).toEqual(take);
    expect(scheduleId(back as typeof take)).toBe(take.id);
  });

  it.each([{ sampleRate: 8000 }, { sweepSeconds: 0 }, { peakDb: 1 }, { peakDb: Number.NaN }])(
    'throws for options out of range: %o',
    (options) => {
      expect(() => scheduleTake(layout('2.0'), options)).toThrow(RangeError);
    },
  );
});
