import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layoutChoices } from '../../../src/system/layout';
import { nominalChannel, notePlaces, rangeInWords } from '../../../src/system/place-notes';
import { apparentElevation } from '../../../src/system/bounced-height';
import type { ChannelLabel } from '../../../src/system/channel';
import { places, plan, room } from './sample-plan';

const sentences = (...of: Parameters<typeof plan>): string[] =>
  notePlaces(plan(...of)).map(({ sentence }) => sentence);

function range(name: string, label: ChannelLabel): string | null {
  const nominal = nominalChannel(plan(name, places({ [label]: [1, 2, 3] })), label);
  return nominal && rangeInWords(nominal);
}

describe('notes on where speakers stand', () => {
  it('say nothing of speakers where the layout has them', () => {
    for (const bed of layoutChoices.beds) {
      for (const heights of layoutChoices.heights) {
        expect(sentences(`${bed}.4.${heights}`)).toEqual([]);
      }
    }
  });

  // Ranges of BS.2051-2 as speaker-places.ts has them.
  it.each([
    ['5.1', 'SiL', 125, 'SiL stands 125° left; BS.775 and BS.2051 have 100° to 120° left.'],
    ['5.1', 'SiR', -90, 'SiR stands 90° right; BS.775 and BS.2051 have 100° to 120° right.'],
    ['7.1', 'BR', -170, 'BR stands 170° right; BS.2051 has 120° to 150° right.'],
    ['5.1', 'FL', 45, 'FL stands 45° left; BS.775 and BS.2051 have 30° left.'],
    ['5.1', 'FC', -9, 'FC stands 9° right; BS.775 and BS.2051 have straight ahead.'],
    ['5.1', 'SiL', 180, 'SiL stands straight behind; BS.775 and BS.2051 have 100° to 120° left.'],
  ] as const)('of %s say where %s at %d° is outside', (name, label, azimuth, sentence) => {
    expect(sentences(name, places({ [label]: [azimuth, 0, null] }))).toContain(sentence);
  });

  it('speak of elevation too', () => {
    expect(sentences('5.1.2', places({ TpFL: [30, 62, 2], TpFR: [-30, 31, 2] }))).toEqual([
      'TpFL stands 62° up; BS.2051 has 30° to 55° up.',
    ]);
    expect(sentences('5.1', places({ FC: [0, 12, 2] }))).toEqual([
      'FC stands 12° up; BS.775 and BS.2051 have ear height.',
    ]);
  });

  it('hold a pair left against right, from 5 degrees on', () => {
    const pair = (right: number) =>
      sentences('7.1', places({ FL: [31, 0, null], FR: [right, 0, null] }));
    expect(pair(-36)).toEqual([]);
    expect(pair(-37)).toEqual([
      'FL stands 31° left and FR 37° right: what should sound between them leans to one side, and no distance or level mends that.',
    ]);
  });

  it('call a lone pair behind the seat the side surrounds, and a pair of backs not', () => {
    const behind = places({ SiL: [135, 0, null], SiR: [-135, 0, null] });
    const role = (name: string) =>
      notePlaces(plan(name, behind)).filter(({ kind }) => kind === 'role');
    expect(role('5.1')).toHaveLength(1);
    expect(role('5.1')[0]?.sentence).toContain('are the side surrounds all the same');
    expect(role('7.1')).toEqual([]);
    expect(sentences('5.1', places({ SiR: [-135, 0, null] }))).toContainEqual(
      expect.stringMatching(/^SiR stands behind the seat and is a side surround all the same/),
    );
  });

  it('find a speaker that the outline leaves outside', () => {
    const notes = notePlaces(plan('5.1', { room, ...places({ FR: [-30, 0, 4.5] }) }));
    expect(notes.map(({ kind, labels }) => [kind, labels])).toEqual([['room', ['FR']]]);
  });

  it('hold the declared distance of FL against the taped one', () => {
    expect(sentences('5.1', places({ FL: [30, 0, 2.44] }))).toEqual([]);
    expect(sentences('5.1', places({ FL: [30, 0, 2.8] }))).toEqual([
      'FL is declared 2.80 m away and its tape distance says 2.40 m: one of them is not right.',
    ]);
    expect(sentences('5.1', places({ FR: [-30, 0, 2.8] }))).toEqual([]);
  });

  it('find two speakers in one spot once another pair is declared', () => {
    const moved = places({ SiL: [135, 0, null], SiR: [-135, 0, null] });
    const spots = (name: string) =>
      notePlaces(plan(name, moved)).flatMap(({ kind, labels }) =>
        kind === 'spot' ? [labels] : [],
      );
    expect(spots('5.1')).toEqual([]);
    expect(spots('7.1')).toEqual([
      ['BL', 'SiL'],
      ['BR', 'SiR'],
    ]);
  });

  it('forgive the degree that no protractor tells', () => {
    const side = (degrees: number) => sentences('7.1', places({ BL: [degrees, 0, null] }));
    expect(side(151)).not.toContainEqual(expect.stringContaining('BS.2051'));
    expect(side(151.5)).toContainEqual('BL stands 152° left; BS.2051 has 120° to 150° left.');
  });

  it('never speak of a number that is none, wherever speakers stand', () => {
    const azimuth = fc.double({ min: -180, max: 180, noNaN: true });
    const elevation = fc.double({ min: -90, max: 90, noNaN: true });
    fc.assert(
      fc.property(azimuth, elevation, fc.double({ min: 0.3, max: 9, noNaN: true }), (az, el, d) => {
        const system = { room, bounced: ['TpFL', 'TpFR'] as const };
        for (const label of ['FL', 'SiR', 'TpFL', 'Sub 1'] as const) {
          const said = sentences('5.1.4', { ...system, ...places({ [label]: [az, el, d] }) });
          expect(said.join(' ')).not.toMatch(/NaN|undefined|null|Infinity/);
        }
      }),
      { seed: 3, numRuns: 200 },
    );
  });
});

describe('the range of a speaker in words', () => {
  it.each([
    ['5.1', 'SiR', '100° to 120° right, 0° to 15° up'],
    ['7.1', 'SiL', '85° to 110° left'],
    ['5.1', 'FC', 'straight ahead'],
    ['5.1.2', 'TpFR', '30° to 45° right, 30° to 55° up'],
    ['5.1.6', 'TpSiL', '90° left, 30° to 45° up'],
    ['5.1', 'Sub 1', null],
  ] as const)('of %s: %s has %s, wherever it stands', (name, label, words) => {
    expect(range(name, label)).toBe(words);
  });
});

describe('the elevation a height is heard at', () => {
  it('is its own when it is aimed down', () => {
    expect(apparentElevation(plan('5.1.2', places({ TpFL: [30, 40, 2] })), 'TpFL')).toBe(40);
  });

  it('is that of its image in the ceiling when it is bounced', () => {
    // 2 m away at ear height under a ceiling 1.3 m above the ears: the image hangs 2.6 m up.
    const here = plan('5.1.2', {
      room,
      bounced: ['TpFL', 'TpFR'],
      ...places({ TpFL: [30, 0, 2] }),
    });
    expect(apparentElevation(here, 'TpFL')).toBeCloseTo((Math.atan(1.3) * 180) / Math.PI, 9);
  });

  it('is not known of a bounced height without room or distance', () => {
    const bounced = { bounced: ['TpFL', 'TpFR'] as const };
    expect(apparentElevation(plan('5.1.2', { ...bounced, room }), 'TpFL')).toBeNull();
    expect(
      apparentElevation(plan('5.1.2', { ...bounced, ...places({ TpFL: [30, 0, 2] }) }), 'TpFL'),
    ).toBeNull();
  });
});
