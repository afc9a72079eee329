import { describe, expect, it } from 'vitest';
import { bassGrid, type Transfer } from '../../../dsp/bass/transfer';
import {
  afterBands,
  deviationOf,
  equaliseSeats,
  seatLevels,
} from '../../../src/proposal/equalise-seats';
import { expectClose } from '../../close';

const hz = bassGrid();

/** A seat whose level is a sum of humps (dB at a frequency, a third of an octave wide). */
function seat(...humps: readonly (readonly [number, number])[]): Transfer {
  const re = hz.map((f) => {
    const db = humps.reduce(
      (sum, [at, height]) => sum + height * Math.exp(-((Math.log2(f / at) / 0.25) ** 2)),
      0,
    );
    return 10 ** (db / 20);
  });
  return { re, im: new Float64Array(hz.length) };
}

const levels = (...seats: Transfer[]) => seatLevels(hz, seats, 25, 120);

describe('equaliser advice', () => {
  it('cuts a peak that all seats share, about where it is and no deeper', () => {
    const heard = levels(seat([50, 6]), seat([50, 6]), seat([50, 6]));
    const [band] = equaliseSeats(heard, 1);
    expect(Math.abs(Math.log2((band?.hz ?? 0) / 50))).toBeLessThan(1 / 6);
    expect(band?.gainDb).toBeLessThanOrEqual(-3);
    expect(band?.gainDb).toBeGreaterThanOrEqual(-8);
    const after = afterBands(heard, band ? [band] : []).seats.map(deviationOf);
    for (const [index, db] of after.entries()) {
      expect(db).toBeLessThan(0.5 * deviationOf(heard.seats[index] ?? new Float64Array(1)));
    }
  });

  it('never boosts into a null that is elsewhere at the next seat', () => {
    const moving = levels(seat([45, -15]), seat([70, -15]), seat([100, -15]));
    for (const { gainDb } of equaliseSeats(moving, 6)) expect(gainDb).toBeLessThan(0);
  });

  it('lifts a hollow that all seats share, by 3 dB at most', () => {
    const hollow = levels(seat([60, -5]), seat([60, -5.5]), seat([60, -4.5]));
    const bands = equaliseSeats(hollow, 6);
    const boosts = bands.filter(({ gainDb }) => gainDb > 0);
    expect(boosts.length).toBeGreaterThan(0);
    for (const { gainDb } of boosts) expect(gainDb).toBeLessThanOrEqual(3);
    // Cuts come before boosts.
    const firstBoost = bands.findIndex(({ gainDb }) => gainDb > 0);
    for (const { gainDb } of bands.slice(firstBoost)) expect(gainDb).toBeGreaterThan(0);
  });

  it('lifts nothing at a single seat, of which nobody knows whether it moves', () => {
    for (const { gainDb } of equaliseSeats(levels(seat([60, -5])), 6)) {
      expect(gainDb).toBeLessThan(0);
    }
  });

  it('has nothing to do where all is even', () => {
    expect(equaliseSeats(levels(seat(), seat()), 4)).toEqual([]);
    expectClose(levels(seat()).seats[0], new Float64Array(109), 1e-9);
  });
});
