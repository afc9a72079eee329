/** An eigenvalue and its vector. */
export interface Eigen {
  readonly value: number;
  readonly vector: Float64Array;
}

/** Eigenvalues, largest first, of a symmetric n × n matrix in rows. Jacobi's rotations. */
export function eigenOf(matrix: Float64Array, n: number): Eigen[] {
  const a = matrix.slice();
  const v = new Float64Array(n * n);
  for (let i = 0; i < n; i++) v[i * n + i] = 1;
  const get = (m: Float64Array, i: number, j: number): number => m[i * n + j] ?? 0;
  for (let sweep = 0; sweep < 12; sweep++) {
    for (let p = 0; p < n; p++) {
      for (let q = p + 1; q < n; q++) {
        const apq = get(a, p, q);
        if (Math.abs(apq) < 1e-12) continue;
        const theta = (get(a, q, q) - get(a, p, p)) / (2 * apq);
        const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
        const c = 1 / Math.sqrt(t * t + 1);
        const s = t * c;
        for (let k = 0; k < n; k++) {
          const [x, y] = [get(a, k, p), get(a, k, q)];
          a[k * n + p] = c * x - s * y;
          a[k * n + q] = s * x + c * y;
        }
        for (let k = 0; k < n; k++) {
          const [x, y] = [get(a, p, k), get(a, q, k)];
          a[p * n + k] = c * x - s * y;
          a[q * n + k] = s * x + c * y;
          const [e, f] = [get(v, k, p), get(v, k, q)];
          v[k * n + p] = c * e - s * f;
          v[k * n + q] = s * e + c * f;
        }
      }
    }
  }
  return Array.from({ length: n }, (_, i) => ({
    value: get(a, i, i),
    vector: Float64Array.from({ length: n }, (_, k) => get(v, k, i)),
  })).sort((x, y) => y.value - x.value);
}
