import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  placeLabels,
  type LabelRequest,
  type PlacedLabel,
} from '../../../components/charts/place-labels';

const bounds = { left: 0, top: 0, right: 300, bottom: 200 };
const label = (id: string, x: number, y: number): LabelRequest => ({
  id,
  width: 60,
  height: 16,
  candidates: [
    { x, y },
    { x, y: y + 40 },
  ],
});

function overlap(requests: readonly LabelRequest[], placed: readonly PlacedLabel[]): string[] {
  const boxes = placed.flatMap((place, i) => {
    const request = requests[i];
    return place.free && request
      ? [{ ...place, width: request.width, height: request.height }]
      : [];
  });
  return boxes.flatMap((a, i) =>
    boxes
      .slice(i + 1)
      .filter(
        (b) =>
          Math.min(a.x + a.width, b.x + b.width) > Math.max(a.x, b.x) &&
          Math.min(a.y + a.height / 2, b.y + b.height / 2) >
            Math.max(a.y - a.height / 2, b.y - b.height / 2),
      )
      .map((b) => `${a.id} on ${b.id}`),
  );
}

describe('placing labels', () => {
  it('takes the first wish where nothing is in the way', () => {
    expect(placeLabels([label('a', 20, 50)], bounds)).toEqual([
      { id: 'a', x: 20, y: 50, free: true },
    ]);
  });

  it('takes the next wish where a curve runs through the first', () => {
    const curve: [number, number][] = [
      [30, 50],
      [40, 50],
      [50, 50],
    ];
    expect(placeLabels([label('a', 20, 50)], bounds, curve)[0]?.y).toBe(90);
  });

  it('keeps labels inside the plot', () => {
    const [placed] = placeLabels([label('a', 290, -20)], bounds);
    expect(placed).toEqual({ id: 'a', x: 240, y: 8, free: true });
  });

  it('moves the second of two labels that wish for one place', () => {
    const requests = [label('a', 20, 50), label('b', 25, 52)];
    const placed = placeLabels(requests, bounds);
    expect(placed.every(({ free }) => free)).toBe(true);
    expect(overlap(requests, placed)).toEqual([]);
  });

  it('says so when there is no room at all', () => {
    const tight = { left: 0, top: 0, right: 60, bottom: 16 };
    const placed = placeLabels([label('a', 0, 8), label('b', 0, 8)], tight);
    expect(placed.map(({ free }) => free)).toEqual([true, false]);
  });

  it('never lets two labels overlap, whatever is asked', () => {
    const place = fc.record({
      x: fc.integer({ min: -50, max: 350 }),
      y: fc.integer({ min: -50, max: 250 }),
    });
    const wish = fc.record({
      width: fc.integer({ min: 10, max: 120 }),
      candidates: fc.array(place, { minLength: 1, maxLength: 4 }),
    });
    fc.assert(
      fc.property(fc.array(wish, { maxLength: 14 }), (wishes) => {
        const requests = wishes.map((one, i) => ({ ...one, id: String(i), height: 16 }));
        expect(overlap(requests, placeLabels(requests, bounds))).toEqual([]);
      }),
      { seed: 5, numRuns: 150 },
    );
  });
});
