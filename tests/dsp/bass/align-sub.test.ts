import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alignSub, scanAlignment, type SubAlignment } from '../../../dsp/bass/align-sub';
import { predictSum } from '../../../dsp/bass/predict-sum';
import type { FilterSpec } from '../../../dsp/filter/analogue';
import { seededRandom } from '../../../dsp/signal/random';
import { expectClose } from '../../close';
import { directSound, echoes, hz } from './seat-responses';

const filters = (crossoverHz: number) =>
  ({
    highPass: [{ family: 'butterworth', kind: 'high-pass', order: 2, cutoffHz: crossoverHz }],
    lowPass: [{ family: 'linkwitz-riley', kind: 'low-pass', order: 4, cutoffHz: crossoverHz }],
  }) satisfies { highPass: FilterSpec[]; lowPass: FilterSpec[] };

const paired = {
  highPass: [{ family: 'linkwitz-riley', kind: 'high-pass', order: 4, cutoffHz: 80 }],
  lowPass: [{ family: 'linkwitz-riley', kind: 'low-pass', order: 4, cutoffHz: 80 }],
} satisfies { highPass: FilterSpec[]; lowPass: FilterSpec[] };

function told(found: ReturnType<typeof alignSub>): SubAlignment {
  if (found.kind !== 'told') throw new Error(`cannot tell: ${found.why}`);
  return found;
}

const turnedOver = <T extends { re: Float64Array; im: Float64Array }>(seats: readonly T[]) =>
  seats.map(({ re, im }) => ({ re: re.map((x) => -x), im: im.map((y) => -y) }));

const mainDelays = [0.01, 0.0112, 0.0094, 0.0101];

describe('alignSub in the free field', () => {
  it('finds the delay by which a sub is early or late, and no polarity to turn', () => {
    for (const early of [-0.006, -0.001, 0.0021, 0.0037, 0.008]) {
      const sub = directSound(mainDelays.map((delay) => delay - early));
      const found = told(
        alignSub([{ seats: directSound(mainDelays) }], sub, { hz, crossoverHz: 80, ...paired }),
      );
      expectClose(found.delaySeconds, early, 2e-5);
      expect(found.inverted).toBe(false);
      expectClose([found.lossDb, found.dip.db], [0, 0], 0.001);
      expect(found.doubt).toBeNull();
      expectClose(found.interval, [early, early], 1e-4);
    }
  });

  it('turns an inverted sub over', () => {
    const sub = turnedOver(directSound(mainDelays.map((delay) => delay - 0.002)));
    const found = told(
      alignSub([{ seats: directSound(mainDelays) }], sub, { hz, crossoverHz: 80, ...paired }),
    );
    expectClose(found.delaySeconds, 0.002, 2e-5);
    expect(found.inverted).toBe(true);
  });

  it('leaves an inverted sub as it is where the processor cannot turn it', () => {
    const sub = turnedOver(directSound(mainDelays));
    const options = { hz, crossoverHz: 80, ...paired, canInvert: false };
    const found = told(alignSub([{ seats: directSound(mainDelays) }], sub, options));
    expect(found.inverted).toBe(false);
    // About half a period of 80 Hz to one side.
    expectClose(Math.abs(found.delaySeconds), 1 / 160, 0.001);
  });

  it('keeps what is set when that is best', () => {
    const seats = directSound(mainDelays);
    const found = told(alignSub([{ seats }], seats, { hz, crossoverHz: 80, ...paired }));
    expectClose(found.delaySeconds, 0, 1e-5);
    expectClose(found.wired.lossDb, 0, 1e-9);
  });

  it('stands between two mains by their weights', () => {
    const sub = directSound(mainDelays);
    const later = { seats: directSound(mainDelays.map((delay) => delay + 0.002)) };
    const mains = (weight: number) => [{ seats: sub }, { ...later, weight }];
    const at = (weight: number): number =>
      told(alignSub(mains(weight), sub, { hz, crossoverHz: 80, ...paired })).delaySeconds;
    expectClose(at(1), 0.001, 5e-5);
    expect(at(5)).toBeGreaterThan(0.0014);
    expect(at(0.2)).toBeLessThan(0.0006);
  });
});

describe('alignSub in rooms of echoes', () => {
  const room = (seed: number) => {
    const random = seededRandom(seed);
    const main = echoes(random, 5, 0.008);
    const sub = echoes(random, 5, 0.004 + 0.008 * random());
    return { main, sub: random() < 0.3 ? turnedOver(sub) : sub };
  };

  it('loses little more than brute force within a period and a quarter, and says what predictSum says', () => {
    for (let seed = 1; seed <= 8; seed++) {
      const { main, sub } = room(seed);
      const options = { hz, crossoverHz: 80, ...filters(80) };
      const found = told(alignSub([{ seats: main }], sub, options));
      const predict = (delaySeconds: number, inverted: boolean) =>
        predictSum(main, sub, {
          hz,
          crossoverHz: 80,
          main: { filters: options.highPass },
          sub: { filters: options.lowPass, delaySeconds, inverted },
        });
      let least = Infinity;
      for (let delay = -1 / 64; delay <= 1 / 64; delay += 0.0004) {
        for (const inverted of [false, true]) {
          least = Math.min(least, predict(found.centreSeconds + delay, inverted).lostDb);
        }
      }
      const own = predict(found.delaySeconds, found.inverted);
      expectClose(found.lossDb, own.lostDb, 1e-9);
      expectClose(found.dip, own.dip, 1e-9);
      expectClose(
        found.seatLossDb,
        own.seats.map(({ lostDb }) => lostDb),
        1e-9,
      );
      // What the farthest delay must save: 2 dB · 0.85².
      expect(found.lossDb).toBeLessThan(least + 1.45);
      expect(found.lossDb).toBeGreaterThan(least - 0.05);
    }
  });

  it('is never worse than what is set now, unless that lies beyond a period', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e6 }),
        fc.double({ min: -0.03, max: 0.03, noNaN: true }),
        fc.boolean(),
        fc.constantFrom(50, 80, 120),
        (seed, delaySeconds, inverted, crossoverHz) => {
          const { main, sub } = room(seed);
          const wired = { delaySeconds, inverted };
          const options = { hz, crossoverHz, ...filters(crossoverHz), wired };
          const found = told(alignSub([{ seats: main }], sub, options));
          const offPeriods = Math.abs(delaySeconds - found.centreSeconds) * crossoverHz;
          if (offPeriods <= 1) expect(found.lossDb).toBeLessThanOrEqual(found.wired.lossDb);
          else expect(found.unchanged).toBe(false);
          expectClose(
            scanAlignment([{ seats: main }], sub, options).lossDb(wired),
            found.wired.lossDb,
            0,
          );
        },
      ),
      { numRuns: 30, seed: 1 },
    );
  });

  it('moves with the sub: so much earlier, so much more delay', () => {
    const { main, sub } = room(3);
    const options = { hz, crossoverHz: 80, ...filters(80) };
    const before = told(alignSub([{ seats: main }], sub, options));
    const early = sub.map(({ re, im }) => {
      const turn = hz.map((f) => 2 * Math.PI * f * 0.003);
      return {
        re: re.map((a, k) => a * Math.cos(turn[k] ?? 0) - (im[k] ?? 0) * Math.sin(turn[k] ?? 0)),
        im: im.map((b, k) => b * Math.cos(turn[k] ?? 0) + (re[k] ?? 0) * Math.sin(turn[k] ?? 0)),
      };
    });
    const after = told(alignSub([{ seats: main }], early, options));
    expectClose(after.delaySeconds - before.delaySeconds, 0.003, 2e-5);
    expectClose(after.lossDb, before.lossDb, 1e-4);
  });

  it('names the other delays that lose as little', () => {
    const { main, sub } = room(5);
    const found = told(alignSub([{ seats: main }], sub, { hz, crossoverHz: 80, ...filters(80) }));
    for (const other of found.alternatives) {
      expect(other.lossDb).toBeLessThanOrEqual(found.lossDb + 0.4);
    }
    const [low, high] = found.toleranceSeconds;
    expect(low).toBeLessThanOrEqual(found.delaySeconds);
    expect(high).toBeGreaterThanOrEqual(found.delaySeconds);
  });
});

describe('alignSub without an answer', () => {
  const seats = directSound(mainDelays);
  const options = { hz, crossoverHz: 80, ...paired };

  it('says that noise hides the phase, and what settles it', () => {
    const found = alignSub([{ seats }], seats, { ...options, noiseMarginDb: 4 });
    expect(found).toMatchObject({ kind: 'cannot tell', why: 'noise', action: 'measure louder' });
  });

  it('says which side is too quiet to matter', () => {
    const quiet = seats.map(({ re, im }) => ({
      re: re.map((x) => x / 100),
      im: im.map((y) => y / 100),
    }));
    expect(alignSub([{ seats }], quiet, options)).toMatchObject({
      why: 'no overlap',
      quieter: 'sub',
      action: 'set levels first',
    });
    expect(alignSub([{ seats: quiet }], seats, options)).toMatchObject({ quieter: 'mains' });
  });

  it('doubts what fewer than three seats say', () => {
    const found = told(alignSub([{ seats: seats.slice(2) }], seats.slice(2), options));
    expect(found.doubt).toBe('few seats');
    expect(found.interval).toBeNull();
  });

  it('refuses no mains, other seats, bad weights and silence', () => {
    expect(() => alignSub([], seats, options)).toThrow(RangeError);
    expect(() => alignSub([{ seats: seats.slice(1) }], seats, options)).toThrow(RangeError);
    expect(() => alignSub([{ seats, weight: 0 }], seats, options)).toThrow(RangeError);
    const seatWeights = [1, 1];
    expect(() => alignSub([{ seats }], seats, { ...options, seatWeights })).toThrow(RangeError);
    const silent = seats.map(() => ({ re: hz.map(() => 0), im: hz.map(() => 0) }));
    expect(() => alignSub([{ seats: silent }], silent, options)).toThrow(RangeError);
  });
});
