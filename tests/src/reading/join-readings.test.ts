import { describe, expect, it } from 'vitest';
import { joinReadings } from '../../../src/reading/join-readings';
import { overlapSeconds } from '../../../src/reading/overlap-seconds';
import type { ChannelReading, Readings } from '../../../src/reading/reading';
import { segmentsToRepeat } from '../../../src/reading/segments-to-repeat';
import type { ChannelLabel } from '../../../src/system/channel';
import { expectClose } from '../../close';
import { pureBass } from '../proposal/sample-bass';
import { readingOf, readingsOf } from '../proposal/sample-readings';
import { readingOf as find } from './wired-room';

const bang = { kind: 'bang', sentence: 'A bang, invented.' } as const;

/** A take of some speakers of a 3.1 room. */
function takeOf(
  takeId: string,
  known: Partial<Record<ChannelLabel, Partial<ChannelReading>>>,
  more: Partial<Readings> = {},
): Readings {
  const channels = Object.entries(known) as [ChannelLabel, Partial<ChannelReading>][];
  return {
    ...readingsOf('3.1'),
    takeId,
    channels: channels.map(([label, one]) => readingOf(label, one)),
    ...more,
  };
}

/** Curves whose response tilts by so many dB an octave from 200 to 4000 Hz. */
function tilted(dbPerOctave: number): Partial<ChannelReading> {
  const hz = Array.from({ length: 240 }, (_, k) => 20 * 2 ** (k / 24));
  const db = hz.map((f) => dbPerOctave * Math.log2(f / 1000));
  const response = { hz, db, noiseDb: hz.map(() => -60) };
  const envelope = { startSeconds: -0.003, stepSeconds: 5e-5, level: [1] };
  return { curves: { response, fit: null, envelope } };
}

describe('joinReadings', () => {
  it('gives the readings of one take as they are', () => {
    const take = takeOf('a', { FL: {}, FR: {} });
    expect(joinReadings([take])).toBe(take);
  });

  it('takes the newest reading without a fault, and lists which take gave which speaker', () => {
    const first = takeOf('a', { FL: {}, FR: { faults: [bang] }, FC: {}, 'Sub 1': {} });
    const second = takeOf('b', { FL: { faults: [bang] }, FR: { polarity: 'inverted' } });
    const joined = joinReadings([first, second]);
    expect(joined.channels.map(({ channel }) => channel)).toEqual(['FL', 'FR', 'FC', 'Sub 1']);
    expect(find(joined, 'FR')).toMatchObject({ polarity: 'inverted', faults: [] });
    expect(find(joined, 'FL').faults).toEqual([]);
    expect(joined.joined).toEqual([
      { takeId: 'a', channels: ['FL', 'FC', 'Sub 1'] },
      { takeId: 'b', channels: ['FR'] },
    ]);
    expect(segmentsToRepeat(first)).toEqual(['FR']);
    expect(segmentsToRepeat(joined)).toEqual([]);
  });

  it('leaves the reference as the mains were read, since subs alone only borrow it', () => {
    const mains = takeOf('a', { FL: {}, FR: {}, FC: {} });
    const sub = takeOf('b', { FL: { polarity: 'inverted' }, 'Sub 1': {} });
    const joined = joinReadings([mains, sub]);
    expect(joined.joined).toEqual([
      { takeId: 'a', channels: ['FL', 'FR', 'FC'] },
      { takeId: 'b', channels: ['Sub 1'] },
    ]);
    const again = takeOf('c', { FL: { polarity: 'inverted' } });
    expect(find(joinReadings([mains, sub, again]), 'FL').polarity).toBe('inverted');
    expect(find(joinReadings([sub, takeOf('d', { 'Sub 1': {} })]), 'FL').polarity).toBe('inverted');
  });

  it('takes the newest of a speaker that is damaged in all takes, and has it repeated', () => {
    const first = takeOf('a', { FL: {}, FR: { faults: [bang], levelDb: -31 } });
    const second = takeOf('b', { FL: {}, FR: { faults: [bang], levelDb: -32 } });
    const joined = joinReadings([first, second]);
    expect(find(joined, 'FR').levelDb).toBe(-32);
    expect(segmentsToRepeat(joined)).toEqual(['FR']);
  });

  it('shifts levels by the difference of the reference speaker', () => {
    const first = takeOf('a', { FL: { levelDb: -30, faults: [] }, FR: { faults: [bang] } });
    const second = takeOf('b', {
      FL: { levelDb: -36, faults: [bang] },
      FR: { levelDb: -38.5 },
      FC: { levelDb: null },
    });
    const joined = joinReadings([first, second]);
    expectClose(find(joined, 'FR').levelDb, -32.5, 1e-9);
    expect(find(joined, 'FC').levelDb).toBeNull();
  });

  it('says so when a level cannot be set against the reference', () => {
    const first = takeOf('a', { FL: { levelDb: -30 } });
    const second = takeOf('b', { FL: { levelDb: null, faults: [bang] }, FR: { levelDb: -38 } });
    expect(find(joinReadings([first, second]), 'FR').notes.join()).toMatch(/could not be set/);
  });

  it('moves distances to the newer tape distance of the reference', () => {
    const first = takeOf('a', { FL: { faults: [bang] }, FR: { distanceMetres: 2.7 } });
    const second = takeOf('b', { FL: {} }, { referenceDistanceMetres: 2.6 });
    const { distanceMetres, distanceInterval } = find(joinReadings([first, second]), 'FR');
    expectClose(distanceMetres, 2.8, 1e-9);
    expectClose(distanceInterval, [2.59, 2.61], 1e-9);
  });

  it('relates takes with different references by absolute time only', () => {
    const own = { distanceMetres: 3.2, arrivalSeconds: 0 };
    const other = { reference: 'FR', referenceDistanceMetres: 3.2 } as const;
    const taped = joinReadings([takeOf('a', { FL: {} }), takeOf('b', { FR: own }, other)]);
    expect(find(taped, 'FR')).toMatchObject({ distanceMetres: null, arrivalSeconds: null });
    expect(find(taped, 'FR').notes.join()).toMatch(/loopback would settle it/);
    const absolute = { absolute: true };
    const wired = joinReadings([
      takeOf('a', { FL: {} }, absolute),
      takeOf('b', { FR: own }, { ...other, ...absolute }),
    ]);
    expect(find(wired, 'FR').distanceMetres).toBe(3.2);
    expectClose(find(wired, 'FR').arrivalSeconds, 0.7 / 343.2, 1e-6, 'speed of sound at 20 °C');
  });

  it('keeps what concerns segments in use, the highest noise floor and the loudest peak', () => {
    const lost = (channel: ChannelLabel | null) =>
      ({ kind: 'lost', samples: 480, channel }) as const;
    const clock = { skewPpm: 0, skewInterval: [0, 0] as const };
    const first = takeOf(
      'a',
      { FL: {}, FR: { faults: [bang] }, FC: {} },
      {
        clock: { ...clock, faults: [lost('FR'), lost('FC'), lost(null)] },
        capture: { clipped: ['FR', 'FC'], noiseFloorDb: -70, peakDb: -9 },
      },
    );
    const second = takeOf(
      'b',
      { FR: {} },
      { capture: { clipped: [], noiseFloorDb: -60, peakDb: -12 } },
    );
    const joined = joinReadings([first, second]);
    expect(joined.clock.faults).toEqual([lost('FC'), lost(null)]);
    expect(joined.capture).toEqual({ clipped: ['FC'], noiseFloorDb: -60, peakDb: -9 });
  });

  it('says when the reference speaker sounds different, and not when only its level does', () => {
    const same = [
      takeOf('a', { FL: tilted(0) }),
      takeOf('b', { FL: { ...tilted(0), levelDb: -40 } }),
    ];
    expect(joinReadings(same).notes).toEqual([]);
    const moved = [takeOf('a', { FL: tilted(0) }), takeOf('b', { FL: tilted(1) })];
    // A tilt of 1 dB an octave over 13/3 octaves is 1.3 dB rms about its mean.
    expect(joinReadings(moved).notes).toEqual([
      expect.stringMatching(/has moved between takes .* FL differs by 1\.[34] dB/),
    ]);
  });

  it('refuses an empty list and takes of different layouts', () => {
    expect(() => joinReadings([])).toThrow(RangeError);
    expect(() => joinReadings([takeOf('a', { FL: {} }), readingsOf('5.1')])).toThrow(/5\.1/);
  });
});

describe('overlapSeconds', () => {
  it('is a little more than the slowest decay', () => {
    const take = takeOf('a', { FL: { decaySeconds: 0.4 }, 'Sub 1': { decaySeconds: 0.6 } });
    const seconds = overlapSeconds(take) ?? Number.NaN;
    expect(seconds).toBeGreaterThan(0.6);
    expect(seconds).toBeLessThan(0.75);
  });

  it('is unknown when a speaker was heard that never decayed, or nothing was heard', () => {
    const take = takeOf('a', {
      FL: { decaySeconds: 0.4 },
      FR: { ...tilted(0), decaySeconds: null },
    });
    expect(overlapSeconds(take)).toBeNull();
    expect(overlapSeconds(takeOf('a', { FL: { decaySeconds: null } }))).toBeNull();
  });
});

describe('the bass of joined takes', () => {
  it('is as loud beside the others as its level, and starts where the reference arrives', () => {
    const bass = pureBass(0.002);
    const first = takeOf('a', { FL: { levelDb: -30 }, FR: { bass } });
    const second = takeOf('b', { FL: { levelDb: -36 }, FC: { bass } });
    const joined = joinReadings([second, first]);
    // The base is the take FL is of, the newest: there it is 6 dB louder.
    expectClose(find(joined, 'FR').bass, bass, 1e-9);
    expectClose(find(joined, 'FC').bass, pureBass(0.002, 10 ** 0.3), 2e-3);
  });

  it('is not told where nothing sets the takes’ levels against each other', () => {
    const first = takeOf('a', { FL: { levelDb: -30 }, FR: {} });
    const second = takeOf('b', { FL: { levelDb: null }, FC: { bass: pureBass(0) } });
    expect(find(joinReadings([second, first]), 'FC').bass).toBeNull();
  });
});
