import { describe, expect, it } from 'vitest';
import { sectionsResponse } from '../../../dsp/filter/biquad';
import { equaliserSection } from '../../../dsp/filter/equaliser';
import { logGrid } from '../../../dsp/response/smoothing';
import {
  deviationFromTarget,
  offsetFromTarget,
  targetCurve,
  targetDb,
  type Target,
} from '../../../dsp/response/target';
import { expectClose } from '../../close';

const flatTarget: Target = { points: null, tiltDbPerOctave: 0, bassShelf: null };

describe('targetDb', () => {
  it('is 0 dB everywhere without parts', () => {
    expect([5, 100, 20_000].map((hz) => targetDb(flatTarget, hz))).toEqual([0, 0, 0]);
  });

  it('runs straight over log frequency between points, and level outside', () => {
    const target = { ...flatTarget, points: { hz: [100, 400, 1600], db: [6, 0, -2] } };
    const read = [20, 100, 200, 400, 800, 1600, 9000].map((hz) => targetDb(target, hz));
    expectClose(read, [6, 6, 3, 0, -1, -2, -2], 1e-12);
  });

  it('tilts round 1 kHz', () => {
    const target = { ...flatTarget, tiltDbPerOctave: -0.8 };
    const read = [250, 1000, 8000].map((hz) => targetDb(target, hz));
    expectClose(read, [1.6, 0, -2.4], 1e-12);
  });

  it('has a bass shelf with half its dB at its frequency', () => {
    for (const db of [8, -5]) {
      const target = { ...flatTarget, bassShelf: { hz: 100, db } };
      expectClose(
        [1, 100, 10_000].map((hz) => targetDb(target, hz)),
        [db, db / 2, 0],
        1e-3,
      );
    }
  });

  it('has the shelf an equaliser of the cookbook makes', () => {
    // At a rate of 4 MHz the bilinear transform moves nothing that counts.
    const sampleRate = 4e6;
    const section = equaliserSection(
      { kind: 'low-shelf', hz: 120, q: Math.SQRT1_2, gainDb: 6 },
      sampleRate,
    );
    const target = { ...flatTarget, bassShelf: { hz: 120, db: 6 } };
    for (const hz of logGrid(30, 1000, 3)) {
      const { re, im } = sectionsResponse([section], hz, sampleRate);
      expectClose(targetDb(target, hz), 20 * Math.log10(Math.hypot(re, im)), 0.01);
    }
  });

  it('adds its parts', () => {
    const points = { hz: [100, 1000], db: [2, 0] };
    const target = { points, tiltDbPerOctave: 1, bassShelf: { hz: 1000, db: 4 } };
    expectClose(targetDb(target, 1000), 0 + 0 + 2, 1e-12);
    const { db } = targetCurve(target, [1000]);
    expectClose(db, [2], 1e-12);
  });

  it('refuses what is no target', () => {
    expect(() => targetDb(flatTarget, 0)).toThrow(RangeError);
    expect(() => targetDb(flatTarget, NaN)).toThrow(RangeError);
    expect(() => targetDb({ ...flatTarget, tiltDbPerOctave: NaN }, 100)).toThrow(RangeError);
    expect(() => targetDb({ ...flatTarget, bassShelf: { hz: 0, db: 3 } }, 100)).toThrow(RangeError);
    const empty = { ...flatTarget, points: { hz: [], db: [] } };
    expect(() => targetDb(empty, 100)).toThrow(RangeError);
  });
});

describe('a curve beside its target', () => {
  const target = { ...flatTarget, tiltDbPerOctave: -1 };
  const hz = logGrid(62.5, 4000, 12);
  const shifted = { hz, db: targetCurve(target, hz).db.map((db) => (db ?? 0) - 31) };

  it('is off by a mean over the band', () => {
    expectClose(offsetFromTarget(shifted, target, [100, 2000]), -31, 1e-9);
    const bent = { hz, db: shifted.db.map((db, k) => ((hz[k] ?? 0) < 499 ? db : db + 2)) };
    // Half the band's octaves, from 250 to 1000 Hz, lie 2 dB higher.
    expectClose(offsetFromTarget(bent, target, [250, 1000]), -30, 0.05);
  });

  it('deviates by what is left', () => {
    const bumped = { hz, db: shifted.db.map((db, k) => (k === 3 ? null : db + (k === 5 ? 4 : 0))) };
    const { db } = deviationFromTarget(bumped, target, -31);
    expect(db[3]).toBeNull();
    expectClose([db[0], db[5], db[30]], [0, 4, 0], 1e-9);
  });

  it('has no offset where nothing in the band is told', () => {
    const noisy = { hz, db: shifted.db.map(() => null) };
    expect(offsetFromTarget(noisy, target, [100, 2000])).toBeNull();
    expect(() => deviationFromTarget(noisy, target, NaN)).toThrow(RangeError);
  });
});
