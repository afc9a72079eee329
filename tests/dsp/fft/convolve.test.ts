import { describe, expect, it } from 'vitest';
import {
  addSpectrum,
  convolve,
  multiplyConjugate,
  multiplySpectra,
} from '../../../dsp/fft/convolve';
import { realSignal, realSpectrum } from '../../../dsp/fft/fft';
import { seededRandom } from '../../../dsp/signal/random';
import { expectClose } from '../../close';

describe('convolve', () => {
  it('multiplies polynomials: (1 + 2x)(3 + 4x + 5x²)', () => {
    expectClose([...convolve([1, 2], [3, 4, 5])], [3, 10, 13, 10], 1e-14);
  });

  it('is the sum over all products, whichever comes first', () => {
    const random = seededRandom(1);
    const a = Float64Array.from({ length: 37 }, random);
    const b = Float64Array.from({ length: 100 }, random);
    const expected = new Float64Array(136);
    a.forEach((x, i) => {
      b.forEach((y, j) => {
        expected[i + j] = (expected[i + j] ?? 0) + x * y;
      });
    });
    expectClose(convolve(a, b), expected, 1e-13);
    expectClose(convolve(b, a), expected, 1e-13);
  });

  it('of nothing is nothing', () => {
    expect(convolve([], [1, 2])).toHaveLength(0);
    expect(convolve([1], [])).toHaveLength(0);
  });

  it('by a single number scales', () => {
    expectClose([...convolve([2], [1, -1, 3])], [2, -2, 6], 1e-14);
  });
});

describe('spectra', () => {
  const size = 16;
  const x = Float64Array.of(1, 2, 3);
  const spectrumOf = (signal: Float64Array): Float64Array => realSpectrum(signal, size);

  it('multiplied delay the signal round the circle', () => {
    const shifted = new Float64Array(size);
    shifted[14] = 1;
    const product = spectrumOf(x);
    multiplySpectra(product, spectrumOf(shifted));
    const expected = new Float64Array(size);
    expected.set([1, 2], 14);
    expected[0] = 3;
    expectClose(realSignal(product, size), expected, 1e-14);
  });

  it('added are the spectrum of the sum', () => {
    const sum = spectrumOf(x);
    addSpectrum(sum, spectrumOf(Float64Array.of(0, 5, -1, 2)));
    expectClose(sum, spectrumOf(Float64Array.of(1, 7, 2, 2)), 1e-14);
  });

  it('multiplied by a conjugate correlate: the lag of a delayed copy is its delay', () => {
    const late = new Float64Array(size);
    late.set(x, 5);
    const product = spectrumOf(late);
    multiplyConjugate(product, spectrumOf(x));
    const lags = realSignal(product, size);
    expectClose([lags[5], lags[4], lags[6]], [14, 8, 8], 1e-13);
  });

  it('of different lengths are refused', () => {
    expect(() => {
      multiplySpectra(new Float64Array(6), new Float64Array(10));
    }).toThrow(RangeError);
    expect(() => {
      multiplyConjugate(new Float64Array(6), new Float64Array(4));
    }).toThrow(RangeError);
  });
});
