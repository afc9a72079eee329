import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DeclaredPlace } from '../../../src/system/declared-system';
import {
  forgetPlace,
  mirrorSpeaker,
  moveSpeaker,
  moveSpeakerTo,
  setBounced,
} from '../../../src/system/move-speaker';
import { metresBetween, offsetOf, placeOf, wrapDegrees } from '../../../src/system/speaker-offset';
import { isTrouble } from '../../../src/trouble';
import { known, places, plan, room, sentenceOf } from './sample-plan';

const place = (
  azimuthDegrees: number,
  elevationDegrees = 0,
  distanceMetres: number | null = null,
): DeclaredPlace => ({ azimuthDegrees, elevationDegrees, distanceMetres });

describe('angle and distance, and metres from the seat', () => {
  it.each([
    [0, 0, 0, -2, 0],
    [90, 0, -2, 0, 0],
    [-90, 0, 2, 0, 0],
    [180, 0, 0, 2, 0],
    [0, 90, 0, 0, 2],
    [30, 0, -1, -Math.sqrt(3), 0],
    [0, 30, 0, -Math.sqrt(3), 1],
  ])('2 m at %d° and %d° up is %d m right, %d m back, %d m up', (az, el, right, back, up) => {
    const offset = offsetOf({ azimuthDegrees: az, elevationDegrees: el, distanceMetres: 2 });
    expect(offset.rightMetres).toBeCloseTo(right, 12);
    expect(offset.backMetres).toBeCloseTo(back, 12);
    expect(offset.upMetres).toBeCloseTo(up, 12);
  });

  it('give each other back wherever a speaker stands', () => {
    const metres = fc.double({ min: -20, max: 20, noNaN: true });
    fc.assert(
      fc.property(metres, metres, metres, (rightMetres, backMetres, upMetres) => {
        const there = { rightMetres, backMetres, upMetres };
        const polar = placeOf(there);
        expect(metresBetween(offsetOf(polar), there)).toBeLessThan(1e-9);
        expect(Math.abs(polar.azimuthDegrees)).toBeLessThanOrEqual(180);
        expect(Math.abs(polar.elevationDegrees)).toBeLessThanOrEqual(90);
        expect(polar.distanceMetres).toBeGreaterThanOrEqual(0);
      }),
      { seed: 5, numRuns: 500 },
    );
  });

  it('are all 0 at the seat itself', () => {
    const polar = placeOf({ rightMetres: 0, backMetres: 0, upMetres: 0 });
    expect(polar).toEqual({ azimuthDegrees: 0, elevationDegrees: 0, distanceMetres: 0 });
  });

  it('turn around the seat without end', () => {
    expect([181, -181, 180, -180, 360, 540, 90].map(wrapDegrees)).toEqual([
      -179, 179, 180, -180, 0, 180, 90,
    ]);
  });
});

describe('moving a speaker', () => {
  it('keeps its place and leaves all others alone', () => {
    const before = plan('5.1', places({ FR: [-25, 0, 2.5] }));
    const after = known(moveSpeaker(before, 'SiL', place(95, 5, 1.9)));
    expect(after.places).toEqual(places({ FR: [-25, 0, 2.5], SiL: [95, 5, 1.9] }).places);
    expect(before.system.places.SiL).toBeUndefined();
  });

  it('says the same by metres as by angle', () => {
    const here = plan('5.1');
    const byMetres = known(
      moveSpeakerTo(here, 'SiL', { rightMetres: -2, backMetres: 0, upMetres: 0 }),
    );
    expect(byMetres).toEqual(known(moveSpeaker(here, 'SiL', place(90, 0, 2))));
  });

  it.each([
    [place(181, 0), 'between −180° and 180°, not at 181°'],
    [place(-200.5, 0), 'not at −200.5°'],
    [place(NaN), 'The angle of SiL is no number'],
    [place(90, 91), 'between −90° and 90°, not at 91°'],
    [place(90, Infinity), 'The elevation of SiL is no number'],
    [place(90, 0, -1), 'more than zero, not −1 m'],
    [place(90, 0, 0), 'more than zero, not 0 m'],
    [place(90, 0, 0.29), 'SiL would stand at the seat'],
    [place(90, 0, 51), 'no speaker stands farther than 50 m'],
    [place(90, 0, NaN), 'The distance of SiL is no number'],
    [place(31, 0), 'SiL and FL would stand in one spot'],
    [place(90, 0, 2.3), 'SiL would stand 0.3 m outside the room'],
    [place(110, 70, 2), 'SiL would stand 0.58 m outside the room'],
  ])('refuses %o: %s', (there, sentence) => {
    const here = plan('5.1', { room });
    expect(sentenceOf(moveSpeaker(here, 'SiL', there))).toContain(sentence);
  });

  it('refuses metres that are no numbers', () => {
    const nowhere = { rightMetres: NaN, backMetres: 1, upMetres: 0 };
    expect(sentenceOf(moveSpeakerTo(plan('5.1'), 'SiL', nowhere))).toContain('no number');
  });

  it('lets a speaker stand above another, and a sub under one', () => {
    const here = plan('5.1.2', places({ FL: [30, 0, 2.4] }));
    known(moveSpeaker(here, 'TpFL', place(30, 40, 2.4)));
    known(moveSpeaker(here, 'Sub 1', place(30, 0, 2.4)));
    expect(sentenceOf(moveSpeaker(here, 'TpFL', place(30, 2, 2.4)))).toContain('one spot');
  });

  it('never lets two speakers of known distance come within 0.15 m, nor one within 0.3 m of the seat', () => {
    const angle = fc.double({ min: -180, max: 180, noNaN: true });
    const metres = fc.double({ min: -1, max: 4, noNaN: true });
    fc.assert(
      fc.property(angle, metres, angle, metres, (a, da, b, db) => {
        const first = moveSpeaker(
          plan('2.0', places({ FR: [-170, 80, 9] })),
          'FL',
          place(a, 0, da),
        );
        expect(isTrouble(first)).toBe(da < 0.3);
        if (isTrouble(first)) return;
        const second = moveSpeaker(plan('2.0', first), 'FR', place(b, 0, db));
        const [one, other] = [a, b].map((degrees) => (degrees * Math.PI) / 180);
        const apart = Math.sqrt(
          Math.max(0, da ** 2 + db ** 2 - 2 * da * db * Math.cos((one ?? 0) - (other ?? 0))),
        );
        if (Math.abs(apart - 0.15) > 0.002) {
          expect(isTrouble(second)).toBe(db < 0.3 || apart < 0.15);
        }
      }),
      { seed: 8, numRuns: 500 },
    );
  });

  it('can be undone: the speaker stands where the layout has it', () => {
    const { system } = plan('5.1', places({ FL: [20, 0, null], FR: [-20, 0, null] }));
    expect(forgetPlace(system, 'FL').places).toEqual(places({ FR: [-20, 0, null] }).places);
  });
});

describe('the other of a pair', () => {
  it('is put opposite', () => {
    const here = plan('5.1', places({ SiR: [-97, 4, 2.1] }));
    expect(known(mirrorSpeaker(here, 'SiR')).places.SiL).toEqual(place(97, 4, 2.1));
  });

  it('is not there for a centre or a sub', () => {
    expect(() => mirrorSpeaker(plan('5.1'), 'FC')).toThrow(RangeError);
    expect(() => mirrorSpeaker(plan('5.1'), 'Sub 1')).toThrow(RangeError);
  });
});

describe('bounced heights', () => {
  it('are bounced and aimed down in pairs', () => {
    const bounced = setBounced(plan('5.1.4'), 'TpFR', true);
    expect(bounced.bounced).toEqual(['TpFL', 'TpFR']);
    const both = setBounced(plan('5.1.4', bounced), 'TpBL', true);
    expect(both.bounced).toEqual(['TpFL', 'TpFR', 'TpBL', 'TpBR']);
    expect(setBounced(plan('5.1.4', both), 'TpFL', false).bounced).toEqual(['TpBL', 'TpBR']);
  });

  it('are heights', () => {
    expect(() => setBounced(plan('5.1.4'), 'FL', true)).toThrow(RangeError);
  });
});
