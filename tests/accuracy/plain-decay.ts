import { nextPowerOfTwo, realSignal, realSpectrum } from '../../dsp/fft/fft';

/** EDT, T20 and T30 of one octave, s; null where the response does not fall so far. */
export interface PlainDecay {
  readonly edt: number | null;
  readonly t20: number | null;
  readonly t30: number | null;
}

/**
 * Decay times of a response without noise by the book and nothing else: an octave cut out of the
 * spectrum, its energy summed backwards sample by sample, a line of least squares through the
 * levels. ISO 3382-1:2009, 5.3 (from memory). Shares no code with dsp/decay.
 */
export function plainDecay(response: Float64Array, sampleRate: number, midHz: number): PlainDecay {
  const size = nextPowerOfTwo(2 * response.length);
  const spectrum = realSpectrum(response, size);
  for (let k = 0; k <= size / 2; k++) {
    const octaves = Math.abs(Math.log2((k * sampleRate) / size / midHz));
    // Flat over the octave but for edges of a sixth of an octave, so that it hardly rings.
    const gain = Math.min(1, Math.max(0, (0.5 + 1 / 12 - octaves) * 6));
    const smooth = Math.sin((Math.PI / 2) * gain);
    spectrum[2 * k] = smooth * (spectrum[2 * k] ?? 0);
    spectrum[2 * k + 1] = smooth * (spectrum[2 * k + 1] ?? 0);
  }
  const band = realSignal(spectrum, size).subarray(0, response.length);
  const left = new Float64Array(band.length);
  let sum = 0;
  for (let n = band.length - 1; n >= 0; n--) left[n] = sum += (band[n] ?? 0) ** 2;
  const levels = left.map((energy) => 10 * Math.log10(energy / sum));
  const of = (topDb: number, bottomDb: number): number | null => {
    const from = levels.findIndex((db) => db <= topDb);
    const to = levels.findIndex((db) => db <= bottomDb);
    if (from < 0 || to < from + 2) return null;
    return -60 / slope(levels.subarray(from, to + 1)) / sampleRate;
  };
  return { edt: of(0, -10), t20: of(-5, -25), t30: of(-5, -35) };
}

/** Slope of a line of least squares, per sample. */
function slope(values: Float64Array): number {
  const middle = (values.length - 1) / 2;
  let [product, square] = [0, 0];
  for (const [n, value] of values.entries()) {
    product += (n - middle) * value;
    square += (n - middle) ** 2;
  }
  return product / square;
}
