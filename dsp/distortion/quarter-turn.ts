import { nextPowerOfTwo, realSignal, realSpectrum } from '../fft/fft';

/**
 * The signal with every frequency turned by a quarter of a period (Hilbert transform): what a
 * harmonic of even order does to a response. The same length; what it spreads beyond is lost.
 */
export function quarterTurn(signal: Float64Array): Float64Array {
  const size = nextPowerOfTwo(2 * signal.length);
  const spectrum = realSpectrum(signal, size);
  for (let k = 0; k < spectrum.length; k += 2) {
    const re = spectrum[k] ?? 0;
    spectrum[k] = spectrum[k + 1] ?? 0;
    spectrum[k + 1] = -re;
  }
  return realSignal(spectrum, size).subarray(0, signal.length);
}
