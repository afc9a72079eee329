import { nextPowerOfTwo, realSpectrum, type HalfSpectrum } from '../fft/fft';

const known = new WeakMap<Float64Array, HalfSpectrum>();

/**
 * Half spectrum of a whole response, zero-padded to the next power of two; kept with the array, as
 * level, curves, decay and bass all start from it. Neither may be changed afterwards.
 */
export function wholeSpectrum(samples: Float64Array): HalfSpectrum {
  const kept = known.get(samples);
  if (kept) return kept;
  const spectrum = realSpectrum(samples, nextPowerOfTwo(samples.length));
  known.set(samples, spectrum);
  return spectrum;
}
