import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arcPath } from '../../../components/plan/range-arc';
import { snapPlace, stepPlace } from '../../../components/plan/snap-place';
import { nothingDeclared } from '../../../src/system/declared-system';
import { layoutOf } from '../fake-bench';

const plan = { layout: layoutOf('5.1.2'), system: nothingDeclared, nominalMetres: 2.4 };
const metres = fc.double({ min: -6, max: 6, noNaN: true });

describe('a place that snaps', () => {
  it('is at a whole degree and, at ear height, at a whole 5 cm within half a step of the point', () => {
    const from = { azimuthDegrees: 20, elevationDegrees: 0, distanceMetres: 2 };
    fc.assert(
      fc.property(metres, metres, (rightMetres, backMetres) => {
        const place = snapPlace(plan, 'FL', from, { rightMetres, backMetres });
        const distance = place.distanceMetres ?? NaN;
        expect(Number.isInteger(place.azimuthDegrees)).toBe(true);
        expect(Math.abs(place.azimuthDegrees)).toBeLessThanOrEqual(180);
        expect(Math.abs(distance - Math.hypot(rightMetres, backMetres))).toBeLessThan(0.0251);
        expect(distance * 20).toBeCloseTo(Math.round(distance * 20), 9);
        expect(place.elevationDegrees).toBe(0);
      }),
      { seed: 12, numRuns: 300 },
    );
  });

  it('comes back by the opposite key, turn by turn', () => {
    const degrees = fc.integer({ min: -180, max: 179 });
    fc.assert(
      fc.property(degrees, fc.boolean(), (azimuthDegrees, shiftKey) => {
        const from = { azimuthDegrees, elevationDegrees: 0, distanceMetres: null };
        const there = stepPlace(plan, 'FL', from, { key: 'ArrowLeft', shiftKey });
        const back = there && stepPlace(plan, 'FL', there, { key: 'ArrowRight', shiftKey });
        expect(Math.cos(((back?.azimuthDegrees ?? NaN) * Math.PI) / 180)).toBeCloseTo(
          Math.cos((azimuthDegrees * Math.PI) / 180),
          9,
        );
        expect(back?.distanceMetres).toBeNull();
      }),
      { seed: 13, numRuns: 200 },
    );
  });

  it('stays where it is under any other key', () => {
    const from = { azimuthDegrees: 1, elevationDegrees: 0, distanceMetres: 2 };
    for (const key of ['Enter', 'a', 'Tab', 'toString']) {
      expect(stepPlace(plan, 'FL', from, { key, shiftKey: false })).toBeNull();
    }
  });
});

describe('the arc of a range', () => {
  it('runs over the left for a left speaker', () => {
    // From straight ahead over the left to the left wall: up, then left on the screen.
    expect(arcPath([0, 90], 10)).toBe('M0.0 -10.0A10.0 10.0 0 0 0 -10.0 -0.0');
  });
});
