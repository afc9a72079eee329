import { realSignal, realSpectrum } from '../fft/fft';

/**
 * Phase in radians of the minimum-phase system whose log magnitude (natural) is given at the bins
 * 0 … size/2 of a transform of `size`, a power of two: the Hilbert transform by folding the real
 * cepstrum. Throws RangeError when the count of bins is not size/2 + 1. Source: Oppenheim and
 * Schafer, Discrete-Time Signal Processing, chapter on cepstra (from memory).
 */
export function minimumPhase(logMagnitude: Float64Array): Float64Array {
  const size = 2 * (logMagnitude.length - 1);
  const spectrum = new Float64Array(size + 2);
  for (let k = 0; k < logMagnitude.length; k++) spectrum[2 * k] = logMagnitude[k] ?? 0;
  const cepstrum = realSignal(spectrum, size);
  for (let n = 1; n < size / 2; n++) cepstrum[n] = 2 * (cepstrum[n] ?? 0);
  cepstrum.fill(0, size / 2 + 1);
  const folded = realSpectrum(cepstrum, size);
  return Float64Array.from(logMagnitude, (_, k) => folded[2 * k + 1] ?? 0);
}
