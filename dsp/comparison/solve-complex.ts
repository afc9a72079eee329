import { divide, magnitude, multiply, type Complex } from '../filter/complex';

/**
 * x of A x = b, by elimination with the largest pivots; a column that others make up wholly gives 0.
 * Throws RangeError unless A is square and b as long.
 */
export function solveComplex(
  matrix: readonly (readonly Complex[])[],
  right: readonly Complex[],
): Complex[] {
  const size = right.length;
  if (matrix.length !== size || matrix.some((row) => row.length !== size)) {
    throw new RangeError(`the matrix must be ${size} by ${size}`);
  }
  const rows = matrix.map((row, j) => [...row, right[j] ?? zero]);
  const at = (row: number, column: number): Complex => rows[row]?.[column] ?? zero;
  const largest = Math.max(...matrix.flat().map(magnitude));
  for (let column = 0; column < size; column++) {
    let pivot = column;
    for (let row = column + 1; row < size; row++) {
      if (magnitude(at(row, column)) > magnitude(at(pivot, column))) pivot = row;
    }
    const [upper, lower] = [rows[column] ?? [], rows[pivot] ?? []];
    [rows[column], rows[pivot]] = [lower, upper];
    const head = at(column, column);
    if (magnitude(head) <= 1e-14 * largest) continue;
    for (let row = column + 1; row < size; row++) {
      const factor = divide(at(row, column), head);
      rows[row] = (rows[row] ?? []).map((value, k) => subtract(value, factor, at(column, k)));
    }
  }
  const found: Complex[] = new Array<Complex>(size).fill(zero);
  for (let row = size - 1; row >= 0; row--) {
    let rest = at(row, size);
    for (let k = row + 1; k < size; k++) rest = subtract(rest, found[k] ?? zero, at(row, k));
    const head = at(row, row);
    found[row] = magnitude(head) <= 1e-14 * largest ? zero : divide(rest, head);
  }
  return found;
}

const zero: Complex = { re: 0, im: 0 };

/** a − b·c */
function subtract(a: Complex, b: Complex, c: Complex): Complex {
  const product = multiply(b, c);
  return { re: a.re - product.re, im: a.im - product.im };
}
