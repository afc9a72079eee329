import { describe, expect, it } from 'vitest';
import { solveComplex } from '../../../dsp/comparison/solve-complex';
import { add, multiply, type Complex } from '../../../dsp/filter/complex';

const c = (re: number, im = 0): Complex => ({ re, im });

describe('linear equations in complex numbers', () => {
  it('are solved: A times the answer is the right side', () => {
    const matrix = [
      [c(0), c(2, 1), c(1, -1)],
      [c(1, 3), c(-1), c(0.5)],
      [c(2), c(0, 1), c(4, 4)],
    ];
    const wanted = [c(1, -2), c(0.25, 3), c(-1)];
    const right = matrix.map((row) =>
      row.reduce((sum, value, k) => add(sum, multiply(value, wanted[k] ?? c(0))), c(0)),
    );
    for (const [k, { re, im }] of solveComplex(matrix, right).entries()) {
      expect(re).toBeCloseTo(wanted[k]?.re ?? 9, 12);
      expect(im).toBeCloseTo(wanted[k]?.im ?? 9, 12);
    }
  });

  it('give 0 for a column that others make up', () => {
    const found = solveComplex(
      [
        [c(1), c(1)],
        [c(1), c(1)],
      ],
      [c(2), c(2)],
    );
    expect(found).toEqual([c(2), c(0)]);
  });

  it('must be square', () => {
    expect(() => solveComplex([[c(1), c(2)]], [c(1)])).toThrow(RangeError);
    expect(() => solveComplex([[c(1)]], [c(1), c(2)])).toThrow(RangeError);
  });
});
