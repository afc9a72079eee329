import { newRoom } from '../signal/scratch';
import { complexPlan } from '../fft/complex-plan';
import { complexSignal, complexSpectrum, nextPowerOfTwo, passingSpectrum } from '../fft/fft';

/** Width of each skirt of the band, octaves. */
export const skirtOctaves = 0.35;

/**
 * Analytic signal of one band of a real signal, interleaved re, im, as long as the signal; its
 * magnitude is the envelope; in what `room` gives, at most four times as long. Zero phase; gain 1 from lowHz to highHz, outside it skirts of raised
 * cosines in log frequency, 0.35 octave wide. The signal is taken as 0 beyond its ends. Throws
 * RangeError unless 0 < lowHz < highHz.
 */
export function analyticBand(
  signal: Float64Array,
  sampleRate: number,
  lowHz: number,
  highHz: number,
  room = newRoom,
): Float64Array {
  if (!(lowHz > 0 && lowHz < highHz)) {
    throw new RangeError(`band must be 0 < lowHz < highHz, got ${lowHz} … ${highHz}`);
  }
  const spread = Math.ceil((4 * sampleRate) / lowHz);
  const size = nextPowerOfTwo(signal.length + spread);
  const spectrum = passingSpectrum(signal, size);
  const plan = complexPlan(size);
  const oneSided = plan.work.fill(0);
  const skirt = 2 ** skirtOctaves;
  const first = Math.max(1, Math.floor((lowHz / skirt / sampleRate) * size));
  const end = Math.min(size / 2, Math.ceil(((highHz * skirt) / sampleRate) * size) + 1);
  for (let bin = first; bin < end; bin++) {
    const gain = 2 * bandGain((bin * sampleRate) / size, lowHz, highHz);
    oneSided[2 * bin] = gain * (spectrum[2 * bin] ?? 0);
    oneSided[2 * bin + 1] = gain * (spectrum[2 * bin + 1] ?? 0);
  }
  const band = room(2 * size);
  plan.inverse(band, oneSided);
  return band.subarray(0, 2 * signal.length);
}

function bandGain(hz: number, lowHz: number, highHz: number): number {
  if (hz >= lowHz && hz <= highHz) return 1;
  const outside = Math.max(Math.log2(lowHz / hz), Math.log2(hz / highHz), 0) / skirtOctaves;
  return 0.5 * (1 + Math.cos(Math.PI * Math.min(outside, 1)));
}

/** Magnitude of complex samples, in what `room` gives. */
export function magnitudes(complex: Float64Array, room = newRoom): Float64Array {
  const result = room(complex.length / 2);
  for (let n = 0; n < result.length; n++) {
    const re = complex[2 * n] ?? 0;
    const im = complex[2 * n + 1] ?? 0;
    result[n] = Math.sqrt(re * re + im * im);
  }
  return result;
}

/**
 * Envelope of a stretch of complex samples on a grid `factor` times finer: entry n stands at
 * from + n/factor. Band-limited interpolation by FFT; the outer 64 samples on either side, where
 * the stretch is faded, mean nothing. Positive frequencies only, as analyticBand gives them.
 */
export function fineEnvelope(
  complex: Float64Array,
  from: number,
  length: number,
  factor: number,
): Float64Array {
  const size = nextPowerOfTwo(length);
  const piece = new Float64Array(2 * size);
  for (let n = 0; n < length; n++) {
    const edge = Math.min(1, (n + 0.5) / 64, (length - n - 0.5) / 64);
    const gain = 0.5 * (1 - Math.cos(Math.PI * edge));
    piece[2 * n] = gain * (complex[2 * (from + n)] ?? 0);
    piece[2 * n + 1] = gain * (complex[2 * (from + n) + 1] ?? 0);
  }
  const spectrum = complexSpectrum(piece);
  const wide = new Float64Array(2 * size * factor);
  wide.set(spectrum.subarray(0, size));
  const negative = spectrum.subarray(size);
  wide.set(negative, wide.length - negative.length);
  const fine = complexSignal(wide);
  for (let n = 0; n < fine.length; n++) fine[n] = factor * (fine[n] ?? 0);
  return magnitudes(fine.subarray(0, 2 * length * factor));
}
