import { describe, expect, it } from 'vitest';
import { bassGrid } from '../../../dsp/bass/transfer';
import { explainBy } from '../../../dsp/comparison/explain-by';
import { echoes, moved, sumOf } from './echoes';

const hz = bassGrid();
const [one, other, third] = [echoes(1, hz), echoes(2, hz), echoes(3, hz)];

describe('a response explained by its parts', () => {
  it('holds as much of each as was put in', () => {
    const response = sumOf(moved(one, hz, 0.5), moved(other, hz, -2));
    const found = explainBy(response, [one, other, third], hz, [30, 300]);
    const factors = found?.shares.map(({ factor }) => factor) ?? [];
    // The ridge of 10⁻⁶ moves them by as much.
    expect(factors[0]?.re).toBeCloseTo(0.5, 4);
    expect(factors[1]?.re).toBeCloseTo(-2, 4);
    expect(factors[2]?.re).toBeCloseTo(0, 4);
    for (const factor of factors) expect(factor.im).toBeCloseTo(0, 4);
    expect(found?.unexplained ?? 1).toBeLessThan(1e-5);
  });

  it('leaves unexplained what no part holds, and says how surely', () => {
    const response = sumOf(one, moved(third, hz, 0.5));
    const found = explainBy(response, [one, other], hz, [30, 300]);
    expect(found?.unexplained ?? 0).toBeGreaterThan(0.03);
    const [first, second] = found?.shares ?? [];
    expect(Math.abs((first?.factor.re ?? 0) - 1)).toBeLessThan(3 * (first?.half ?? 0));
    expect(Math.hypot(second?.factor.re ?? 9, second?.factor.im ?? 9)).toBeLessThan(
      3 * (second?.half ?? 0),
    );
  });

  it('is nothing for silence and needs a part', () => {
    const silence = { re: new Float64Array(hz.length), im: new Float64Array(hz.length) };
    expect(explainBy(silence, [one], hz, [30, 300])).toBeNull();
    expect(() => explainBy(one, [], hz, [30, 300])).toThrow(RangeError);
  });
});
