import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { overlapArea, placeLabels, type Box } from '../../../components/plan/place-labels';

const space = { reach: 144, symbol: 9, obstacles: [] };
const label = { halfWidth: 21, halfHeight: 8 };

function overlaps(boxes: readonly Box[]): number {
  return boxes.flatMap((box, index) =>
    boxes.slice(index + 1).filter((other) => overlapArea(box, other) > 0),
  ).length;
}

describe('placing labels', () => {
  it('keeps a lone label right beside its symbol, away from the listener', () => {
    const [box] = placeLabels([{ x: 60, y: 0, ...label }], space);
    expect(box?.x).toBeGreaterThan(60 + 9 + 21);
    expect(box?.x).toBeLessThan(60 + 9 + 21 + 10);
    expect(box?.y).toBeCloseTo(0);
  });

  it('keeps a label inside the drawing when its symbol stands at the edge', () => {
    const [box] = placeLabels([{ x: 135, y: 0, ...label }], space);
    expect((box?.x ?? 0) + 21).toBeLessThanOrEqual(144);
  });

  it('lets no two labels overlap, wherever up to nineteen speakers stand', () => {
    const speaker = fc.record({
      angle: fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
      radius: fc.double({ min: 25, max: 100, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(speaker, { minLength: 1, maxLength: 19 }), (speakers) => {
        const requests = speakers.map(({ angle, radius }) => ({
          x: Math.sin(angle) * radius,
          y: -Math.cos(angle) * radius,
          ...label,
        }));
        return overlaps(placeLabels(requests, space)) === 0;
      }),
      { seed: 7, numRuns: 150 },
    );
  });

  it('gives the same places for the same speakers', () => {
    const requests = [0, 1, 2, 3].map((index) => ({ x: 50 + index, y: index * 4, ...label }));
    expect(placeLabels(requests, space)).toEqual(placeLabels(requests, space));
  });
});

describe('the area two boxes share', () => {
  const box = { x: 0, y: 0, halfWidth: 2, halfHeight: 1 };

  it('is the product of the shared sides', () => {
    expect(overlapArea(box, { ...box, x: 3, y: 1 })).toBe(1);
  });

  it('is 0 for boxes that only touch', () => {
    expect(overlapArea(box, { ...box, x: 4 })).toBe(0);
  });
});
