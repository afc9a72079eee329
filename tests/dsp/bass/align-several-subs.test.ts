import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alignSeveralSubs, judgeSubs } from '../../../dsp/bass/align-several-subs';
import type { SubSetting } from '../../../dsp/bass/seat-spread';
import { seededRandom } from '../../../dsp/signal/random';
import { expectClose } from '../../close';
import { arrivals, directSound, echoes, hz } from './seat-responses';

const plain: SubSetting = { delaySeconds: 0, gainDb: 0, inverted: false };

const roomOf = (seed: number, count: number, seats = 4) => {
  const random = seededRandom(seed);
  return Array.from({ length: count }, () => echoes(random, seats, 0.004 + 0.008 * random()));
};

describe('alignSeveralSubs', () => {
  it('brings two subs of the free field together: no deviation, no level lost', () => {
    const subs = [directSound([0.01, 0.01, 0.01]), directSound([0.0063, 0.0063, 0.0063])];
    const found = alignSeveralSubs(subs, { hz });
    expectClose(found.settings[1]?.delaySeconds, 0.0037, 1e-9);
    expect(found.settings[1]?.inverted).toBe(false);
    expectClose([found.deviationDb, found.levelDb, found.cost], [0, 0, 0], 1e-6);
    expectClose(found.alone, { deviationDb: 0, levelDb: 0, cost: 0 }, 1e-6);
  });

  it('turns over the one of three that is inverted', () => {
    const at = [0.01, 0.012];
    const inverted = at.map((seconds) => arrivals([{ seconds: seconds - 0.004, gain: -1 }]));
    const found = alignSeveralSubs([directSound(at), inverted, directSound(at)], { hz });
    expectClose(
      found.settings.map(({ delaySeconds }) => delaySeconds),
      [0, 0.004, 0],
      1e-9,
    );
    expect(found.settings.map((one) => one.inverted)).toEqual([false, true, false]);
    expectClose(found.cost, 0, 1e-6);
  });

  it('fills with one sub what the other leaves out at a seat', () => {
    // The second seat hardly hears the first sub, and the first hardly the second.
    const weak = arrivals([{ seconds: 0.01, gain: 0.1 }]);
    const strong = arrivals([{ seconds: 0.01, gain: 1 }]);
    const subs = [
      [strong, weak],
      [weak, strong],
    ];
    const found = alignSeveralSubs(subs, { hz });
    // Half of 20 dB between two seats.
    expectClose(found.alone.deviationDb, 10, 1e-6);
    expectClose(found.deviationDb, 0, 0.01);
  });

  it('says what the standard deviation over seats is: of ±3 dB, 3 dB', () => {
    const seat = (db: number) => arrivals([{ seconds: 0.01, gain: 10 ** (db / 20) }]);
    const sub = [seat(3), seat(-3)];
    const { deviationDb, levelDb } = judgeSubs([sub, sub], [plain, plain], { hz });
    expectClose(deviationDb, 3, 1e-6);
    // The loudest response is 0 dB.
    expectClose(levelDb, -3, 1e-6);
  });

  it('comes within 0.09 of brute force on the same grid', () => {
    const small = { hz, mostDelaySeconds: 0.002, mostGainDb: 3 };
    const settings: SubSetting[] = [-2, -1, 0, 1, 2].flatMap((ms) =>
      [-3, 0, 3].flatMap((gainDb) =>
        [false, true].map((inverted) => ({ delaySeconds: ms / 1000, gainDb, inverted })),
      ),
    );
    for (const seed of [1, 2, 3]) {
      const two = roomOf(seed, 2);
      const best = Math.min(...settings.map((one) => judgeSubs(two, [plain, one], small).cost));
      expect(alignSeveralSubs(two, small).cost).toBeLessThanOrEqual(best + 1e-9);
    }
    for (const seed of [4, 5]) {
      const three = roomOf(seed, 3, 3);
      let best = Infinity;
      for (const second of settings) {
        for (const third of settings) {
          best = Math.min(best, judgeSubs(three, [plain, second, third], small).cost);
        }
      }
      expect(alignSeveralSubs(three, small).cost).toBeLessThanOrEqual(best + 0.09);
    }
  });

  it('is never worse than what is set now, repeats itself, and keeps to its limits', () => {
    const setting = fc.record({
      delaySeconds: fc.double({ min: -0.005, max: 0.005, noNaN: true }),
      gainDb: fc.double({ min: -3, max: 3, noNaN: true }),
      inverted: fc.boolean(),
    });
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e6 }),
        fc.array(setting, { minLength: 2, maxLength: 3 }),
        (seed, wired) => {
          const subs = roomOf(seed, wired.length, 3);
          const options = { hz, wired, mostDelaySeconds: 0.01 };
          const found = alignSeveralSubs(subs, options);
          expect(found.cost).toBeLessThanOrEqual(found.wired.cost);
          expect(alignSeveralSubs(subs, options)).toEqual(found);
          expect(found.settings[0]).toEqual(wired[0]);
          for (const { delaySeconds, gainDb } of found.settings) {
            const [first = plain] = wired;
            expect(Math.abs(delaySeconds - first.delaySeconds)).toBeLessThanOrEqual(0.010001);
            expect(Math.abs(gainDb - first.gainDb)).toBeLessThanOrEqual(6.000001);
          }
          expectClose(judgeSubs(subs, found.settings, options).cost, found.cost, 1e-9);
        },
      ),
      { numRuns: 8, seed: 2 },
    );
  });

  it('looks at the level alone where there is one seat, and says so', () => {
    const found = alignSeveralSubs(roomOf(7, 2, 1), { hz });
    expect(found.doubt).toBe('one seat');
    expectClose(found.deviationDb, 0, 1e-9);
    expect(found.levelDb).toBeGreaterThanOrEqual(found.wired.levelDb);
  });

  it('refuses one sub, five, seats that differ and silence', () => {
    const [one = [], two = []] = roomOf(1, 2);
    expect(() => alignSeveralSubs([one], { hz })).toThrow(RangeError);
    expect(() => alignSeveralSubs([one, two, one, two, one], { hz })).toThrow(RangeError);
    expect(() => alignSeveralSubs([one, two.slice(1)], { hz })).toThrow(RangeError);
    expect(() => alignSeveralSubs([one, two], { hz, wired: [plain] })).toThrow(RangeError);
    const silent = one.map(() => arrivals([]));
    expect(() => alignSeveralSubs([silent, silent], { hz })).toThrow(RangeError);
  });
});
