import { scratch } from '../signal/scratch';
import { complexPlan } from './complex-plan';

/** Half spectrum of a real signal: bins 0 … size/2 as interleaved re, im; length size + 2. */
export type HalfSpectrum = Float64Array;

/** Smallest power of two ≥ max(count, 2). */
export function nextPowerOfTwo(count: number): number {
  let size = 2;
  while (size < count) size *= 2;
  return size;
}

/**
 * Half spectrum X_k = Σ x_n e^(−2πi kn/size) of a real signal, zero-padded to `size`; in `into`
 * where that is given, to spare new arrays in a loop. Throws RangeError when size is no power of
 * two of at least 2, or shorter than the signal, or does not fit `into`.
 *
 * Even and odd samples travel as real and imaginary part of one transform of half the size, Z:
 * X_k = E_k + e^(−2πik/size) O_k, E and O its conjugate-symmetric and antisymmetric (over i) part.
 */
export function realSpectrum(
  signal: ArrayLike<number>,
  size: number,
  into: HalfSpectrum = new Float64Array(size + 2),
): HalfSpectrum {
  checkSize(size);
  if (into.length !== size + 2) {
    throw new RangeError(`into must hold ${size + 2} numbers, got ${into.length}`);
  }
  if (signal.length > size) {
    throw new RangeError(`size must hold the signal of ${signal.length}, got ${size}`);
  }
  const half = size / 2;
  const plan = complexPlan(half);
  plan.work.set(signal);
  plan.work.fill(0, signal.length);
  plan.forward(into.subarray(0, size), plan.work);
  const turns = twiddles(half);
  const z0 = into[0] ?? 0;
  const z1 = into[1] ?? 0;
  for (let k = 1, m = half - 1; k <= m; k++, m--) {
    const a = into[2 * k] ?? 0;
    const b = into[2 * k + 1] ?? 0;
    const c = into[2 * m] ?? 0;
    const d = into[2 * m + 1] ?? 0;
    const evenRe = 0.5 * (a + c);
    const evenIm = 0.5 * (b - d);
    const oddRe = 0.5 * (b + d);
    const oddIm = 0.5 * (c - a);
    const cos = turns[2 * k] ?? 0;
    const sin = turns[2 * k + 1] ?? 0;
    const re = oddRe * cos + oddIm * sin;
    const im = oddIm * cos - oddRe * sin;
    into[2 * k] = evenRe + re;
    into[2 * k + 1] = evenIm + im;
    into[2 * m] = evenRe - re;
    into[2 * m + 1] = im - evenIm;
  }
  into[0] = z0 + z1;
  into[1] = 0;
  into[size] = z0 - z1;
  into[size + 1] = 0;
  return into;
}

/**
 * Room that all callers share, for who is done with it before the next use of it or the next passing
 * spectrum; what it holds is of the last one.
 */
export const passingRoom = scratch();

/** realSpectrum into passingRoom: spares an array that costs as much as its transform. */
export function passingSpectrum(signal: ArrayLike<number>, size: number): HalfSpectrum {
  return realSpectrum(signal, size, passingRoom(size + 2));
}

/**
 * Real signal of `size` samples whose half spectrum is given; inverse of realSpectrum, in `into`
 * where that is given, which may be the spectrum's own first `size` numbers. The imaginary parts of
 * the first and the last bin, which no real signal has, are ignored. Throws RangeError when size is
 * no power of two of at least 2 or does not fit the spectrum or `into`.
 */
export function realSignal(
  spectrum: HalfSpectrum,
  size: number,
  into: Float64Array = new Float64Array(size),
): Float64Array {
  checkSize(size);
  if (into.length !== size) {
    throw new RangeError(`into must hold ${size} numbers, got ${into.length}`);
  }
  if (spectrum.length !== size + 2) {
    throw new RangeError(`spectrum must hold ${size + 2} numbers, got ${spectrum.length}`);
  }
  const half = size / 2;
  const plan = complexPlan(half);
  const turns = twiddles(half);
  const z = plan.work;
  // Bins in reverse order, so that a forward transform is the inverse.
  const scale = 1 / size;
  z[0] = scale * ((spectrum[0] ?? 0) + (spectrum[size] ?? 0));
  z[1] = scale * ((spectrum[0] ?? 0) - (spectrum[size] ?? 0));
  for (let k = 1, m = half - 1; k <= m; k++, m--) {
    const a = spectrum[2 * k] ?? 0;
    const b = spectrum[2 * k + 1] ?? 0;
    const c = spectrum[2 * m] ?? 0;
    const d = spectrum[2 * m + 1] ?? 0;
    const evenRe = scale * (a + c);
    const evenIm = scale * (b - d);
    const re = scale * (a - c);
    const im = scale * (b + d);
    const cos = turns[2 * k] ?? 0;
    const sin = turns[2 * k + 1] ?? 0;
    const oddRe = re * cos - im * sin;
    const oddIm = im * cos + re * sin;
    z[2 * m] = evenRe - oddIm;
    z[2 * m + 1] = evenIm + oddRe;
    z[2 * k] = evenRe + oddIm;
    z[2 * k + 1] = oddRe - evenIm;
  }
  plan.forward(into, z);
  return into;
}

/** Complex transform of interleaved re, im of length 2·size; forward, unscaled. */
export function complexSpectrum(signal: Float64Array): Float64Array {
  const spectrum = new Float64Array(signal.length);
  complexPlan(signal.length / 2).forward(spectrum, signal);
  return spectrum;
}

/** Inverse of complexSpectrum, scaled by 1/size. */
export function complexSignal(spectrum: Float64Array): Float64Array {
  const signal = new Float64Array(spectrum.length);
  complexPlan(spectrum.length / 2).inverse(signal, spectrum);
  return signal;
}

const turnTables = new Map<number, Float64Array>();

/** cos and sin of πk/half for k = 0 … half/2. */
function twiddles(half: number): Float64Array {
  const known = turnTables.get(half);
  if (known) return known;
  const count = Math.floor(half / 2) + 1;
  const table = new Float64Array(2 * count);
  for (let k = 0; k < count; k++) {
    table[2 * k] = Math.cos((Math.PI * k) / half);
    table[2 * k + 1] = Math.sin((Math.PI * k) / half);
  }
  turnTables.set(half, table);
  return table;
}

function checkSize(size: number): void {
  if (!Number.isInteger(size) || size < 2 || (size & (size - 1)) !== 0) {
    throw new RangeError(`size must be a power of two of at least 2, got ${size}`);
  }
}
