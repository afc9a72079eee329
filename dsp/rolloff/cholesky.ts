/**
 * Inverse of the lower Cholesky factor of a symmetric positive matrix: with W = L⁻¹, WᵀW = C⁻¹.
 * `matrix` is n × n in rows; the answer is n × n in rows, zero above the diagonal.
 * Throws RangeError when the matrix is not positive definite.
 */
export function whiteningMatrix(matrix: Float64Array, n: number): Float64Array {
  if (matrix.length !== n * n) {
    throw new RangeError(`matrix must hold ${n * n} numbers, got ${matrix.length}`);
  }
  return invertLower(choleskyFactor(matrix, n), n);
}

function choleskyFactor(matrix: Float64Array, n: number): Float64Array {
  const factor = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i * n + j] ?? 0;
      for (let k = 0; k < j; k++) sum -= (factor[i * n + k] ?? 0) * (factor[j * n + k] ?? 0);
      if (i === j) {
        if (!(sum > 0)) throw new RangeError(`matrix must be positive definite, got pivot ${sum}`);
        factor[i * n + i] = Math.sqrt(sum);
      } else {
        factor[i * n + j] = sum / (factor[j * n + j] ?? 1);
      }
    }
  }
  return factor;
}

function invertLower(factor: Float64Array, n: number): Float64Array {
  const inverse = new Float64Array(n * n);
  for (let column = 0; column < n; column++) {
    for (let row = column; row < n; row++) {
      let sum = row === column ? 1 : 0;
      for (let k = column; k < row; k++) {
        sum -= (factor[row * n + k] ?? 0) * (inverse[k * n + column] ?? 0);
      }
      inverse[row * n + column] = sum / (factor[row * n + row] ?? 1);
    }
  }
  return inverse;
}
