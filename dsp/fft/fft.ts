import FFT from 'fft.js';

/** Half spectrum of a real signal: bins 0 … size/2 as interleaved re, im; length size + 2. */
export type HalfSpectrum = Float64Array;

interface Plan {
  readonly fft: FFT;
  readonly input: Float64Array;
  readonly output: Float64Array;
}

const plans = new Map<number, Plan>();

/** Smallest power of two ≥ max(count, 2). */
export function nextPowerOfTwo(count: number): number {
  let size = 2;
  while (size < count) size *= 2;
  return size;
}

function planOf(size: number): Plan {
  const known = plans.get(size);
  if (known) return known;
  if (!Number.isInteger(size) || size < 2 || (size & (size - 1)) !== 0) {
    throw new RangeError(`size must be a power of two of at least 2, got ${size}`);
  }
  const plan = {
    fft: new FFT(size),
    input: new Float64Array(2 * size),
    output: new Float64Array(2 * size),
  };
  plans.set(size, plan);
  return plan;
}

/**
 * Half spectrum X_k = Σ x_n e^(−2πi kn/size) of a real signal, zero-padded to `size`.
 * Throws RangeError when size is no power of two or shorter than the signal.
 */
export function realSpectrum(signal: ArrayLike<number>, size: number): HalfSpectrum {
  const { fft, input, output } = planOf(size);
  if (signal.length > size) {
    throw new RangeError(`size must hold the signal of ${signal.length}, got ${size}`);
  }
  const padded = input.subarray(0, size);
  padded.set(signal);
  padded.fill(0, signal.length);
  fft.realTransform(output, padded);
  return output.slice(0, size + 2);
}

/** Real signal of `size` samples whose half spectrum is given; inverse of realSpectrum. */
export function realSignal(spectrum: HalfSpectrum, size: number): Float64Array {
  const { fft, input, output } = planOf(size);
  if (spectrum.length !== size + 2) {
    throw new RangeError(`spectrum must hold ${size + 2} numbers, got ${spectrum.length}`);
  }
  input.set(spectrum);
  fft.completeSpectrum(input);
  fft.inverseTransform(output, input);
  const signal = new Float64Array(size);
  for (let n = 0; n < size; n++) signal[n] = output[2 * n] ?? 0;
  return signal;
}

/** Complex transform of interleaved re, im of length 2·size; forward, unscaled. */
export function complexSpectrum(signal: Float64Array): Float64Array {
  const { fft, output } = planOf(signal.length / 2);
  fft.transform(output, signal);
  return output.slice();
}

/** Inverse of complexSpectrum, scaled by 1/size. */
export function complexSignal(spectrum: Float64Array): Float64Array {
  const { fft, output } = planOf(spectrum.length / 2);
  fft.inverseTransform(output, spectrum);
  return output.slice();
}
