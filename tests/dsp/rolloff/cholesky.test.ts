import { describe, expect, it } from 'vitest';
import { whiteningMatrix } from '../../../dsp/rolloff/cholesky';
import { seededRandom } from '../../../dsp/signal/random';
import { expectClose } from '../../close';

describe('whiteningMatrix', () => {
  it('inverts a factor done by hand', () => {
    // [[4, 2], [2, 5]] = L Lᵀ with L = [[2, 0], [1, 2]], so L⁻¹ = [[1/2, 0], [−1/4, 1/2]].
    expectClose(whiteningMatrix(Float64Array.of(4, 2, 2, 5), 2), [0.5, 0, -0.25, 0.5], 1e-15);
  });

  it('turns a covariance into the unit matrix', () => {
    const n = 12;
    const random = seededRandom(3);
    const root = Float64Array.from({ length: n * n }, () => random() - 0.5);
    const covariance = new Float64Array(n * n);
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) {
        let sum = i === j ? 0.01 : 0;
        for (let k = 0; k < n; k++) sum += (root[i * n + k] ?? 0) * (root[j * n + k] ?? 0);
        covariance[i * n + j] = sum;
      }
    }
    const white = whiteningMatrix(covariance, n);
    const at = (m: Float64Array, i: number, j: number): number => m[i * n + j] ?? 0;
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) {
        let sum = 0;
        for (let k = 0; k < n; k++) {
          for (let l = 0; l < n; l++)
            sum += at(white, i, k) * at(covariance, k, l) * at(white, j, l);
        }
        expectClose(sum, i === j ? 1 : 0, 1e-9);
      }
    }
  });

  it('refuses a matrix that is no covariance', () => {
    expect(() => whiteningMatrix(Float64Array.of(1, 2, 2, 1), 2)).toThrow('positive definite');
    expect(() => whiteningMatrix(Float64Array.of(1, 2, 2), 2)).toThrow('4 numbers, got 3');
  });
});
