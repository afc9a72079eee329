import { describe, expect, it } from 'vitest';
import type { ChannelLabel } from '../../../src/system/channel';
import { checkFromSeat } from '../../../src/wirecheck/check-from-seat';
import type { WalkSound } from '../../../src/wirecheck/walk';
import { plainFindings } from './plain-finding';

const distances = { FL: 2.4, FR: 2.45, FC: 2.1, SiL: 1.6, SiR: 1.9, 'Sub 1': 3 } as const;

/** Sounds of a seat where each channel sounds from the speaker it is wired to; the path delays 0.3 s. */
function heard(
  wiring: Partial<Record<ChannelLabel, ChannelLabel | null>> = {},
  more: (sound: WalkSound) => Partial<WalkSound> = () => ({}),
): WalkSound[] {
  return (Object.keys(distances) as (keyof typeof distances)[]).map((channel) => {
    const from = wiring[channel] === undefined ? channel : wiring[channel];
    const metres = from === null ? null : distances[from as keyof typeof distances];
    const sub = from === 'Sub 1';
    const sound: WalkSound = {
      channel,
      levelDb: metres === null || sub ? null : -40,
      lowDb: metres === null ? null : sub ? -30 : -45,
      arrivalSeconds: metres === null || sub ? null : 0.3 + metres / 343.2,
      polarity: 'normal',
    };
    return { ...sound, ...more(sound) };
  });
}

const found = (sounds: readonly WalkSound[]): string[] =>
  plainFindings(checkFromSeat(sounds, distances).findings);

describe('a check from the seat', () => {
  it('finds nothing where all arrive from their distances, give or take a hand', () => {
    expect(found(heard())).toEqual([]);
    const off = (sound: WalkSound): Partial<WalkSound> => ({
      arrivalSeconds:
        sound.arrivalSeconds === null
          ? null
          : sound.arrivalSeconds + (sound.channel === 'FC' ? 0.4e-3 : -0.3e-3),
    });
    expect(found(heard({}, off))).toEqual([]);
  });

  it('suspects two and three that arrive in each other’s places', () => {
    expect(found(heard({ FC: 'SiL', SiL: 'FC' }))).toEqual(['suspect FC SiL']);
    expect(found(heard({ FL: 'SiL', SiL: 'FC', FC: 'FL' }))).toEqual(['suspect FC FL SiL']);
  });

  it('says which pairs stand too alike to be told apart, and does not judge them', () => {
    const { findings, cannotTell } = checkFromSeat(heard({ FL: 'FR', FR: 'FL' }), distances);
    expect(findings).toEqual([]);
    expect(cannotTell).toContainEqual(['FL', 'FR']);
    expect(cannotTell).not.toContainEqual(['FC', 'SiL']);
  });

  it('tells silent and inverted channels, and a speaker that sounds like a sub', () => {
    expect(found(heard({ SiR: null }))).toEqual(['silent SiR']);
    const turned = heard({}, ({ channel }) => (channel === 'FC' ? { polarity: 'inverted' } : {}));
    expect(found(turned)).toEqual(['inverted FC']);
    expect(found(heard({ FC: 'Sub 1', 'Sub 1': 'FC' }))).toEqual(['suspect FC Sub 1']);
  });

  it('leaves out speakers without a distance, and refuses one that is none', () => {
    const rest = { FL: 2.4, FR: 2.45, SiL: 1.6, SiR: 1.9 };
    expect(checkFromSeat(heard(), rest).unplaced).toEqual(['FC']);
    expect(() => checkFromSeat(heard(), { FC: -1 })).toThrow(RangeError);
  });
});
