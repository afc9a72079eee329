import { nextPowerOfTwo, realSignal, realSpectrum } from '../fft/fft';

/**
 * The signal with every frequency turned by a quarter of a period (Hilbert transform), `before`
 * samples of it before the first; what a harmonic of even order does to a response. Its length is
 * that of the signal and `before`.
 */
export function quarterTurn(signal: Float64Array, before: number): Float64Array {
  const length = before + signal.length;
  const size = nextPowerOfTwo(length);
  const padded = new Float64Array(length);
  padded.set(signal, before);
  const spectrum = realSpectrum(padded, size);
  for (let k = 0; k < spectrum.length; k += 2) {
    const re = spectrum[k] ?? 0;
    spectrum[k] = spectrum[k + 1] ?? 0;
    spectrum[k + 1] = -re;
  }
  return realSignal(spectrum, size).subarray(0, length);
}
