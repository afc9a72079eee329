import { nextPowerOfTwo, realSignal, realSpectrum } from './fft';

/** Linear convolution of two real signals; length a + b − 1. */
export function convolve(a: ArrayLike<number>, b: ArrayLike<number>): Float64Array {
  if (a.length === 0 || b.length === 0) return new Float64Array(0);
  const length = a.length + b.length - 1;
  const size = nextPowerOfTwo(length);
  const x = realSpectrum(a, size);
  multiplySpectra(x, realSpectrum(b, size));
  return realSignal(x, size).slice(0, length);
}

/** x ← x · y, bin by bin; spectra of interleaved re, im of one length, else RangeError. */
export function multiplySpectra(x: Float64Array, y: Float64Array): void {
  checkLengths(x, y);
  for (let k = 0; k < x.length; k += 2) {
    const a = x[k] ?? 0;
    const b = x[k + 1] ?? 0;
    const c = y[k] ?? 0;
    const d = y[k + 1] ?? 0;
    x[k] = a * c - b * d;
    x[k + 1] = a * d + b * c;
  }
}

/** x ← x + y, bin by bin; throws RangeError when the lengths differ. */
export function addSpectrum(x: Float64Array, y: Float64Array): void {
  checkLengths(x, y);
  for (let n = 0; n < x.length; n++) x[n] = (x[n] ?? 0) + (y[n] ?? 0);
}

/**
 * x ← x · conj(y), bin by bin; in the time domain the cross-correlation of x with y.
 * Throws RangeError when the lengths differ.
 */
export function multiplyConjugate(x: Float64Array, y: Float64Array): void {
  checkLengths(x, y);
  for (let k = 0; k < x.length; k += 2) {
    const a = x[k] ?? 0;
    const b = x[k + 1] ?? 0;
    const c = y[k] ?? 0;
    const d = y[k + 1] ?? 0;
    x[k] = a * c + b * d;
    x[k + 1] = b * c - a * d;
  }
}

function checkLengths(x: Float64Array, y: Float64Array): void {
  if (x.length !== y.length) {
    throw new RangeError(`spectra must have one length, got ${x.length} and ${y.length}`);
  }
}
