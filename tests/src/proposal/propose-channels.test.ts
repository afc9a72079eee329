import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultProcessorSteps } from '../../../src/proposal/default-processor-steps';
import type { ChannelProposal, ProcessorSteps } from '../../../src/proposal/proposal';
import { proposeSettings } from '../../../src/proposal/propose-settings';
import type { Readings } from '../../../src/reading/reading';
import type { ChannelLabel } from '../../../src/system/channel';
import { isTrouble } from '../../../src/trouble';
import { expectClose } from '../../close';
import { layoutNamed, readingsOf } from './sample-readings';

function channelsOf(
  readings: Readings,
  processor: ProcessorSteps = defaultProcessorSteps,
): ReadonlyMap<ChannelLabel, ChannelProposal> {
  const proposal = proposeSettings(readings, layoutNamed(readings.layout), processor);
  if (isTrouble(proposal)) throw new Error(proposal.sentence);
  return new Map(proposal.channels.map((channel) => [channel.channel, channel]));
}

const feet = { ...defaultProcessorSteps, distanceStepMetres: 0.3 };
const plain = defaultProcessorSteps;

describe('the distance of a channel', () => {
  it("is rounded to the processor's step, and says what that costs", () => {
    const readings = readingsOf('2.0', { FR: { distanceMetres: 2.68, arrivalSeconds: 0.000524 } });
    const fr = channelsOf(readings, feet).get('FR');
    expect(fr?.distanceMetres).toBe(2.7);
    // 0.02 m at 343.2 m/s is 0.058 ms.
    expect(fr?.distanceReason).toContain('0.52 ms after the reference: 2.68 m');
    expect(fr?.distanceReason).toContain('costs 0.06 ms');
  });

  it('is the path over the ceiling for a bounced height', () => {
    const heights = { ceilingPathMetres: 4.1, distanceMetres: 2.9 };
    const found = channelsOf(readingsOf('2.0.2', { TpFL: heights })).get('TpFL');
    expect(found?.distanceMetres).toBe(4.1);
    expect(found?.distanceReason).toContain('over the ceiling');
  });

  it('is null with the reading’s own words when there is no arrival', () => {
    const notes = ['The noise hides the arrival.'];
    const readings = readingsOf('2.0', { FR: { distanceMetres: null, notes } });
    const fr = channelsOf(readings).get('FR');
    expect(fr?.distanceMetres).toBeNull();
    expect(fr?.distanceReason).toContain('No arrival could be read for front right.');
    expect(fr?.distanceReason).toContain('The noise hides the arrival.');
  });

  it('moves with all others when the range is too short for one, keeping the differences', () => {
    const short = { ...plain, distanceRangeMetres: [0, 9] as const };
    const readings = readingsOf('3.0', {
      FR: { distanceMetres: 9.5 },
      FC: { distanceMetres: 2.2 },
    });
    const found = channelsOf(readings, short);
    expectClose(
      (['FL', 'FR', 'FC'] as const).map((label) => found.get(label)?.distanceMetres),
      [2, 9, 1.7],
      1e-9,
    );
    expect(found.get('FL')?.distanceReason).toContain('moved by −0.50 m together');
  });

  it('is null for an arrival that no place can give, which moves nobody else', () => {
    const found = channelsOf(readingsOf('2.1', { 'Sub 1': { distanceMetres: -0.4 } }));
    expect(found.get('Sub 1')?.distanceMetres).toBeNull();
    expect(found.get('Sub 1')?.distanceReason).toContain('−0.40 m away, which cannot be');
    expect(found.get('FL')?.distanceMetres).toBe(2.5);
  });

  it('is null only for those outside when no common move can help', () => {
    const tiny = { ...plain, distanceRangeMetres: [0, 5] as const };
    const readings = readingsOf('3.0', { FR: { distanceMetres: 9.5 } });
    const found = channelsOf(readings, tiny);
    expect(found.get('FL')?.distanceMetres).toBe(2.5);
    expect(found.get('FR')?.distanceMetres).toBeNull();
    expect(found.get('FR')?.distanceReason).toContain('farther apart');
  });
});

describe('the trim of a channel', () => {
  it('undoes its difference from the reference, subs in their own band', () => {
    const readings = readingsOf('2.1', { FR: { levelDb: -28.2 }, 'Sub 1': { levelDb: -33.6 } });
    const found = channelsOf(readings);
    expect(found.get('FL')?.levelTrimDb).toBe(0);
    expect(found.get('FR')?.levelTrimDb).toBe(-2);
    expect(found.get('FR')?.levelReason).toContain(
      'Front right is 1.8 dB louder in the room than front left (500 to 2000 Hz).',
    );
    expect(found.get('FR')?.levelReason).toContain('leaves 0.2 dB');
    expect(found.get('Sub 1')?.levelTrimDb).toBe(3.5);
    expect(found.get('Sub 1')?.levelReason).toContain('(30 to 80 Hz) is 3.6 dB quieter');
  });

  it('says what the noise leaves unsure of it where that is wider than a tenth of a decibel', () => {
    const found = channelsOf(
      readingsOf('3.1', {
        FL: { levelDb: -30, levelInterval: [-30.3, -29.7] },
        FR: { levelDb: -28.2, levelInterval: [-28.6, -27.8] },
        FC: { levelDb: -29, levelInterval: null },
      }),
    );
    expect(found.get('FR')?.levelReason).toContain(
      'Because of the noise this level holds to 0.5 dB only, nine times in ten.',
    );
    for (const label of ['FL', 'FC', 'Sub 1'] as const) {
      expect(found.get(label)?.levelReason).not.toContain('noise');
    }
    const narrow = { levelDb: -30, levelInterval: [-30.02, -29.98] as const };
    const quiet = channelsOf(readingsOf('2.0', { FL: narrow, FR: narrow }));
    expect(quiet.get('FR')?.levelReason).not.toContain('noise');
  });

  it('moves all together rather than leave the range', () => {
    const readings = readingsOf('3.0', { FR: { levelDb: -44 }, FC: { levelDb: -30.5 } });
    const found = channelsOf(readings);
    const trims = (['FL', 'FR', 'FC'] as const).map((label) => found.get(label)?.levelTrimDb);
    expectClose(trims, [-2, 12, -1.5], 1e-9);
    expect(found.get('FL')?.levelReason).toContain('moved by −2.0 dB together');
  });

  it('stops at the end of the range for a sub that is far too loud, and says what to turn', () => {
    const found = channelsOf(readingsOf('2.1', { 'Sub 1': { levelDb: -2 }, FR: { levelDb: -31 } }));
    expect(found.get('FL')?.levelTrimDb).toBe(0);
    expect(found.get('Sub 1')?.levelTrimDb).toBe(-12);
    expect(found.get('Sub 1')?.warnings.join()).toContain(
      "Turn the sub's own level down by at least 16.0 dB",
    );
  });

  it('is set against the middle of the mains when the reference has no level', () => {
    const found = channelsOf(
      readingsOf('3.1', { FL: { levelDb: null }, FR: { levelDb: -29 }, FC: { levelDb: -31 } }),
    );
    expect(found.get('FL')?.levelTrimDb).toBeNull();
    expect([found.get('FR')?.levelTrimDb, found.get('FC')?.levelTrimDb]).toEqual([-1, 1]);
    expect(found.get('FR')?.levelReason).toContain('the middle of the mains');
  });

  it('leaves the in-room levels equal within half a step, for any levels that fit', () => {
    const level = fc.double({ min: -36, max: -25, noNaN: true });
    fc.assert(
      fc.property(fc.tuple(level, level, level, level), ([fl, fr, centre, sub]) => {
        const levels = { FL: fl, FR: fr, FC: centre, 'Sub 1': sub } as const;
        const readings = readingsOf('3.1', {
          FL: { levelDb: fl },
          FR: { levelDb: fr },
          FC: { levelDb: centre },
          'Sub 1': { levelDb: sub },
        });
        const found = channelsOf(readings);
        const after = (['FL', 'FR', 'FC', 'Sub 1'] as const).map((label) => {
          const trim = found.get(label)?.levelTrimDb ?? NaN;
          expectClose(trim * 2, Math.round(trim * 2), 1e-9);
          expect(Math.abs(trim)).toBeLessThanOrEqual(12);
          return levels[label] + trim;
        });
        expect(Math.max(...after) - Math.min(...after)).toBeLessThanOrEqual(0.5 + 1e-9);
      }),
      { numRuns: 200, seed: 4 },
    );
  });
});

describe('the polarity of a channel', () => {
  it('is passed on, with what to do about an inverted speaker', () => {
    const fr = channelsOf(readingsOf('2.0', { FR: { polarity: 'inverted' } })).get('FR');
    expect(fr?.polarity).toBe('inverted');
    expect(fr?.warnings.join()).toContain('swap its two wires');
  });

  it('blames the microphone before the wires when most speakers read inverted', () => {
    const inverted = { polarity: 'inverted' } as const;
    const all = channelsOf(readingsOf('3.1', { FL: inverted, FR: inverted }));
    for (const label of ['FL', 'FR'] as const) {
      expect(all.get(label)?.warnings.join()).toContain('the microphone or its input');
      expect(all.get(label)?.warnings.join()).not.toContain('swap its two wires');
    }
    const half = channelsOf(readingsOf('2.1', { FL: inverted }));
    expect(half.get('FL')?.warnings.join()).toContain('swap its two wires');
  });

  it('is never called a fault of a sub', () => {
    const sub = channelsOf(readingsOf('2.1', { 'Sub 1': { polarity: 'inverted' } })).get('Sub 1');
    expect(sub?.polarity).toBe('cannot tell');
    expect(sub?.warnings.join()).not.toContain('wires');
  });
});

it('subs are warned of: 10 dB through LFE, and what several together add up to', () => {
  const one = channelsOf(readingsOf('2.1')).get('Sub 1');
  expect(one?.warnings).toHaveLength(1);
  expect(one?.warnings[0]).toContain('10 dB louder');
  const [first, two] = (['Sub 1', 'Sub 2'] as const).map((label) =>
    channelsOf(readingsOf('2.2')).get(label),
  );
  // Of both in one sentence, so that it is handed over once.
  expect(two?.warnings[0]).toMatch(/^If .*1 and .*2 were reached through LFE/);
  expect(first?.warnings).toEqual(two?.warnings);
  expect(two?.warnings[1]).toBe('2 subs together come out 3 to 6 dB louder than each alone.');
});
