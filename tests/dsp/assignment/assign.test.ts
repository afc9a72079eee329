import { describe, expect, it } from 'vitest';
import { assign, pairMargins } from '../../../dsp/assignment/assign';
import { seededRandom } from '../../../dsp/signal/random';

/** Cost of the cheapest pairing and of the next one, by trying every pairing there is. */
function tryAll(costs: readonly (readonly number[])[]): [number, number] {
  let [best, second] = [Infinity, Infinity];
  const visit = (row: number, used: readonly number[], sum: number): void => {
    const line = costs[row];
    if (!line) {
      if (sum < best) [best, second] = [sum, best];
      else second = Math.min(second, sum);
      return;
    }
    for (const [column, cost] of line.entries()) {
      if (!used.includes(column)) visit(row + 1, [...used, column], sum + cost);
    }
  };
  visit(0, [], 0);
  return [best, second];
}

function drawCosts(random: () => number, rows: number, columns: number, forbid = 0): number[][] {
  return Array.from({ length: rows }, () =>
    Array.from({ length: columns }, () => (random() < forbid ? Infinity : 20 * random() - 10)),
  );
}

const totalOf = (costs: readonly (readonly number[])[], pairing: readonly number[]): number =>
  pairing.reduce((sum, column, row) => sum + (costs[row]?.[column] ?? Infinity), 0);

describe('the assignment of rows to columns', () => {
  it('is the cheapest of all pairings, square or wide, and beats the next by its margin', () => {
    const random = seededRandom(5);
    for (let round = 0; round < 200; round++) {
      const rows = 1 + Math.floor(5 * random());
      const costs = drawCosts(random, rows, rows + Math.floor(3 * random()));
      const pairing = assign(costs);
      if (!pairing) throw new Error('every pair was allowed');
      expect(new Set(pairing).size).toBe(rows);
      const [best, second] = tryAll(costs);
      expect(totalOf(costs, pairing)).toBeCloseTo(best, 9);
      const margin = Math.min(...pairMargins(costs, pairing));
      if (second === Infinity) expect(margin).toBe(Infinity);
      else expect(margin).toBeCloseTo(second - best, 9);
    }
  });

  it('never takes a forbidden pair, and is none when all pairings need one', () => {
    const random = seededRandom(6);
    let none = 0;
    for (let round = 0; round < 200; round++) {
      const costs = drawCosts(random, 4, 4, 0.5);
      const [best] = tryAll(costs);
      const pairing = assign(costs);
      if (best === Infinity) {
        none++;
        expect(pairing).toBeNull();
      } else expect(totalOf(costs, pairing ?? [])).toBeCloseTo(best, 9);
    }
    expect(none).toBeGreaterThan(20);
    expect(none).toBeLessThan(180);
  });

  it('refuses costs it cannot pair', () => {
    expect(() => assign([[1], [2]])).toThrow(RangeError);
    expect(() => assign([[1, 2], [3]])).toThrow(RangeError);
    expect(() => assign([[Number.NaN]])).toThrow(RangeError);
  });

  it('pairs nothing with nothing', () => {
    expect(assign([])).toEqual([]);
  });
});
