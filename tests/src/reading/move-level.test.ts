import { describe, expect, it } from 'vitest';
import { withGain } from '../../../src/reading/at-gain';
import { joinReadings } from '../../../src/reading/join-readings';
import { moveLevel, moveLevelBetween } from '../../../src/reading/move-level';
import type { ChannelReading, Readings } from '../../../src/reading/reading';
import { withholdMended } from '../../../src/reading/withhold-mended';
import type { ChannelLabel } from '../../../src/system/channel';
import { expectClose } from '../../close';
import { readingOf, readingsOf } from '../proposal/sample-readings';
import { readingOf as find } from './wired-room';

const level = { levelDb: -30, levelInterval: [-30.3, -29.8] } as const;
const louder = { levelDb: -24, levelInterval: [-24.4, -23.9] } as const;
const old = { levelDb: -24 };
const none = { levelDb: null, levelInterval: null };

describe('moveLevel', () => {
  it('moves the interval with its level, and makes none', () => {
    expectClose(moveLevel(level, 6), { levelDb: -24, levelInterval: [-24.3, -23.8] }, 1e-9);
    expect(moveLevel({ levelDb: -30, levelInterval: null }, 1)).toEqual({
      levelDb: -29,
      levelInterval: null,
    });
    expect(moveLevel(old, 1)).toEqual({ levelDb: -23 });
    expect(moveLevel(none, 1)).toEqual(none);
  });
});

describe('moveLevelBetween', () => {
  it('adds in power what all three are off, each to its side', () => {
    const moved = moveLevelBetween(louder, level, louder);
    const under = Math.hypot(0.4, 0.2, 0.4);
    const over = Math.hypot(0.1, 0.3, 0.1);
    expectClose(moved, { levelDb: -18, levelInterval: [-18 - under, -18 + over] }, 1e-9);
  });

  it('gives no interval where one of them has none, and nothing without their levels', () => {
    expect(moveLevelBetween(level, old, louder)).toEqual({ levelDb: -30, levelInterval: null });
    expect(moveLevelBetween(old, level, louder)).toEqual({ levelDb: -18 });
    expect(moveLevelBetween(level, none, louder)).toBeNull();
    expect(moveLevelBetween(level, louder, none)).toBeNull();
  });
});

function takeOf(
  takeId: string,
  known: Partial<Record<ChannelLabel, Partial<ChannelReading>>>,
): Readings {
  const channels = Object.entries(known) as [ChannelLabel, Partial<ChannelReading>][];
  return {
    ...readingsOf('3.1'),
    takeId,
    channels: channels.map(([label, one]) => readingOf(label, one)),
  };
}

const bang = { kind: 'bang', sentence: 'A bang, invented.' } as const;

describe('the interval of a level', () => {
  it('widens by that of both levels of the reference in joined readings', () => {
    const first = takeOf('a', { FL: { ...louder, faults: [] }, FR: { faults: [bang] } });
    const second = takeOf('b', { FL: { ...level, faults: [bang] }, FR: level });
    const { levelDb, levelInterval } = find(joinReadings([first, second]), 'FR');
    expect(levelDb).toBe(-24);
    const under = Math.hypot(0.3, 0.2, 0.4);
    const over = Math.hypot(0.2, 0.3, 0.1);
    expectClose(levelInterval, [-24 - under, -24 + over], 1e-9);
    expect(find(joinReadings([first, second]), 'FL').levelInterval).toEqual([-24.4, -23.9]);
  });

  it('is none where the level could not be set against the reference', () => {
    const first = takeOf('a', { FL: { ...level, faults: [] }, FR: { faults: [bang] } });
    const second = takeOf('b', { FL: { ...none, faults: [bang] }, FR: level });
    expect(find(joinReadings([first, second]), 'FR')).toMatchObject({
      levelDb: -30,
      levelInterval: null,
    });
  });

  it('moves with the gain of the test signal', () => {
    const moved = withGain(takeOf('a', { FL: level, FR: none, FC: old }), 3);
    expectClose(find(moved, 'FL').levelInterval, [-27.3, -26.8], 1e-9);
    expect(find(moved, 'FR')).toMatchObject(none);
    expect(find(moved, 'FC')).not.toHaveProperty('levelInterval');
  });

  it('goes where audio was mended in its band', () => {
    const reading = readingOf('FR', level);
    expect(withholdMended(reading, 1000, false)).toMatchObject(none);
    expect(withholdMended(reading, 200, false)).toMatchObject(level);
  });
});
