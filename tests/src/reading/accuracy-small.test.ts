import { beforeAll, describe, expect, it } from 'vitest';
import { layoutFromName } from '../../../src/system/layout';
import { scheduleTake } from '../../../src/take/schedule-take';
import { isTrouble } from '../../../src/trouble';
import type { RoomFigures } from '../../accuracy/figures';
import { measureRoom } from '../../accuracy/measure-room';
import { quantile } from '../../accuracy/table';

/** A small form of `npm run accuracy`: five rooms, few speakers, the whole way from take to readings. */
describe('readings of simulated takes, held against the truth', () => {
  const rooms: RoomFigures[] = [];
  beforeAll(async () => {
    const layout = layoutFromName('3.1.2');
    if (isTrouble(layout)) throw new RangeError(layout.sentence);
    const schedule = scheduleTake(layout, { sweepSeconds: 1.5 });
    for (const seed of [101, 102, 103, 104, 105]) {
      rooms.push(await measureRoom(layout, schedule, seed % 3 === 0 ? 'live' : 'typical', seed));
    }
  }, 300_000);

  it('find the skew to a hundredth of a ppm, in noise to a tenth', () => {
    for (const { snrDb, errorPpm } of rooms.flatMap(({ skew }) => skew)) {
      expect(Math.abs(errorPpm ?? Number.NaN)).toBeLessThan(snrDb >= 30 ? 0.01 : 0.1);
    }
  });

  it('find every lost and repeated buffer, in its segment, and no other', () => {
    for (const { buffers } of rooms) {
      expect(buffers).toMatchObject({ found: buffers.planted, falseAlarms: 0, wrongSegment: 0 });
      for (const error of buffers.sizeErrors) expect(Math.abs(error)).toBeLessThan(0.02);
    }
  });

  it('find the distance of every direct speaker to a centimetre', () => {
    const direct = rooms.flatMap(({ arrivals }) =>
      arrivals.filter(({ kind }) => kind === 'front' || kind === 'height'),
    );
    expect(direct.length).toBeGreaterThan(12);
    for (const { error } of direct) expect(Math.abs(error ?? Number.NaN)).toBeLessThan(0.01);
  });

  it('find the ceiling path of bounced heights where they tell one', () => {
    const over = rooms.flatMap(({ arrivals }) => arrivals.filter(({ kind }) => kind === 'ceiling'));
    const told = over.flatMap(({ error }) => (error === null ? [] : [Math.abs(error)]));
    expect(told.length).toBeGreaterThanOrEqual(over.length / 3);
    expect(Math.max(...told)).toBeLessThan(0.02);
  });

  it('never call a polarity wrong, and tell most', () => {
    const all = rooms.flatMap(({ polarity }) => polarity);
    expect(all).not.toContain('wrong');
    expect(all.filter((one) => one === 'right').length).toBeGreaterThan(0.6 * all.length);
  });

  it('find the in-room level to a tenth of a decibel', () => {
    for (const one of rooms.flatMap(({ levels }) => levels)) {
      expect(Math.abs(one?.error ?? Number.NaN)).toBeLessThan(0.1);
    }
  });

  it('hold the true roll-off in most of their 90 % intervals', () => {
    const mains = rooms.flatMap(({ rolloffs }) => rolloffs.filter(({ kind }) => kind === 'main'));
    const crossings = mains.flatMap(({ f6 }) => f6 ?? []);
    expect(crossings.length).toBeGreaterThan(0.9 * mains.length);
    const held = crossings.filter(({ truthHz, low, high }) => truthHz >= low && truthHz <= high);
    expect(held.length / crossings.length).toBeGreaterThan(0.7);
    const errors = crossings.map(({ truthHz, medianHz }) => Math.abs(medianHz / truthHz - 1));
    expect(quantile(errors, 0.5)).toBeLessThan(0.4);
  });
});
