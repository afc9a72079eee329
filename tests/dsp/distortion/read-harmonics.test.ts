import { describe, expect, it } from 'vitest';
import type { HarmonicReading } from '../../../dsp/distortion/harmonic-reading';
import { drawRoom, drawSeats } from '../../../dsp/room/draw-room';
import { drawSpeaker, placeSpeaker } from '../../../dsp/room/draw-speaker';
import { impulseResponseAt } from '../../../dsp/room/impulse-response-at';
import { distanceBetween } from '../../../dsp/room/point';
import { soundSpeed } from '../../../dsp/room/room';
import { sweepSignal, synchronisedSweep } from '../../../dsp/signal/sweep';
import { distort, harmonicsOf, rate, readPlayed, type Polynomial } from './distorted-sweep';

const polynomial: Polynomial = { a2: 0.03, a3: 0.04, a4: 0.02, a5: 0.03 };
const main = synchronisedSweep(10, 20_000, 2 ** 17, rate);
const sub = synchronisedSweep(10, 500, 2 ** 17, rate);

const dbOf = (value: number): number => 20 * Math.log10(Math.abs(value));

/** Told values of an order from `lowHz` to `highHz`, with what they should be. */
function errors(
  reading: HarmonicReading,
  order: number,
  [lowHz, highHz]: readonly [number, number],
  expectedDb: (hz: number) => number,
): number[] {
  const curve = reading.harmonics.find((one) => one.order === order);
  return reading.hz.flatMap((hz, i) => {
    const db = curve?.db[i] ?? null;
    return db === null || hz < lowHz || hz > highHz ? [] : [db - expectedDb(hz)];
  });
}

const worst = (values: readonly number[]): number => Math.max(...values.map(Math.abs));

describe('harmonics of a known polynomial', () => {
  const [h1 = 1, ...above] = harmonicsOf(polynomial);

  it('are those of its closed form, over the whole band', () => {
    const reading = readPlayed(distort(main, polynomial), main, null, -150, 1);
    for (const [at, amplitude] of above.entries()) {
      const order = at + 2;
      const found = errors(reading, order, [25, 3000], () => dbOf(amplitude / h1));
      expect(found.length).toBeGreaterThan(35);
      expect(worst(found)).toBeLessThan(0.4);
      const middle = errors(reading, order, [300, 3000], () => dbOf(amplitude / h1));
      expect(worst(middle)).toBeLessThan(0.05);
    }
  });

  it('add up to their power sum', () => {
    const reading = readPlayed(distort(main, polynomial), main, null, -150, 1);
    const total = Math.hypot(...above) / h1;
    const at = reading.hz.findIndex((hz) => Math.abs(hz - 1000) < 1);
    expect(reading.total.db[at]).toBeCloseTo(dbOf(total), 1);
  });

  it('end where the sweep does', () => {
    const reading = readPlayed(distort(main, polynomial), main, null, -150, 1);
    for (const { order, limitedBy } of reading.harmonics) {
      const last = reading.hz.findLast((_, i) => limitedBy[i] === null) ?? 0;
      expect(last * order).toBeLessThan(0.92 * main.endHz);
      expect(last * order).toBeGreaterThan(0.7 * main.endHz);
    }
  });

  it("are those of its closed form in a sub's band, where they lie within the sweep", () => {
    const reading = readPlayed(distort(sub, polynomial), sub, null, -150, 1);
    for (const [at, amplitude] of above.entries()) {
      const found = errors(reading, at + 2, [20, 80], () => dbOf(amplitude / h1));
      expect(found.length).toBe(12);
      expect(worst(found)).toBeLessThan(0.6);
    }
  });
});

describe('harmonics in a room', () => {
  const room = drawRoom(3, 'typical');
  const [seat = { x: 1, y: 1, z: 1 }] = drawSeats(room, 3, 1);
  const position = { x: 0.6, y: room.size.y - 0.5, z: 1 };
  const speaker = placeSpeaker(drawSpeaker(5), position, seat);
  const response = impulseResponseAt(room, speaker, seat, rate);
  const arrival = Math.round((distanceBetween(position, seat) / soundSpeed(room)) * rate);

  /** Level of the room's own response in 1/6 octave, by a sum of sines. */
  const levelDb = (hz: number): number => {
    const tones = Array.from({ length: 16 }, (_, n) => hz * 2 ** ((n + 0.5) / 96 - 1 / 12));
    const powers = tones.map((tone) => {
      const [stepRe, stepIm] = [
        Math.cos((2 * Math.PI * tone) / rate),
        Math.sin((2 * Math.PI * tone) / rate),
      ];
      let [re, im] = [0, 0];
      // Horner's rule from the last sample down: Σ value e^(−jωn).
      for (let n = response.length - 1; n >= 0; n--) {
        const turned = re * stepRe + im * stepIm + (response[n] ?? 0);
        im = im * stepRe - re * stepIm;
        re = turned;
      }
      return re * re + im * im;
    });
    return 10 * Math.log10(powers.reduce((sum, one) => sum + one, 0) / tones.length);
  };

  it('are what sines stepped through the band would give', () => {
    const [h1 = 1, h2 = 0, h3 = 0] = harmonicsOf(polynomial);
    const reading = readPlayed(distort(main, polynomial), main, { response, arrival }, -90, 4);
    for (const [order, amplitude] of [
      [2, h2],
      [3, h3],
    ] as const) {
      const truth = (hz: number): number =>
        dbOf(amplitude / h1) + levelDb(order * hz) - levelDb(hz);
      const found = errors(reading, order, [38, 130], truth).toSorted(
        (a, b) => Math.abs(a) - Math.abs(b),
      );
      expect(found.length).toBeGreaterThanOrEqual(9);
      expect(Math.abs(found[found.length >> 1] ?? 9)).toBeLessThan(1);
      expect(worst(found)).toBeLessThan(3);
    }
  });

  it('are not told of a speaker that has none, in noise of two kinds', () => {
    for (const seed of [11, 12]) {
      const reading = readPlayed(sweepSignal(main), main, { response, arrival }, -65, seed);
      const told = reading.harmonics.flatMap(({ db }) => db.filter((one) => one !== null));
      expect(told).toEqual([]);
      expect(reading.total.db.every((one) => one === null)).toBe(true);
    }
  });
});

describe('noise alone', () => {
  it('gives no distortion at all', () => {
    for (const seed of [1, 2, 3, 4]) {
      const reading = readPlayed(new Float64Array(main.lengthSamples), main, null, -60, seed);
      expect(reading.harmonics.flatMap(({ db }) => db.filter((one) => one !== null))).toEqual([]);
      expect(reading.total.db.every((one) => one === null)).toBe(true);
    }
  });
});
