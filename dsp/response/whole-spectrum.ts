import { nextPowerOfTwo, passingSpectrum, realSpectrum, type HalfSpectrum } from '../fft/fft';
import { newRoom } from '../signal/scratch';

interface Whole {
  /** Its first numbers. */
  readonly low: HalfSpectrum;
  readonly power: Float64Array;
}

/** What is kept of a spectrum: this share of it. */
const keptShare = 1 / 8;
const known = new WeakMap<Float64Array, Whole>();

/**
 * |X|² of a whole response, zero-padded to the next power of two; kept with the array, as level,
 * curves, decay and bass all start from one transform. Neither may be changed afterwards.
 */
export function wholePower(samples: Float64Array): Float64Array {
  return transform(samples).power;
}

/**
 * The first `bins` bins of its half spectrum and perhaps more, which may not be changed; an eighth
 * of all are kept.
 */
export function lowSpectrum(samples: Float64Array, bins: number): HalfSpectrum {
  const { low } = transform(samples);
  if (2 * bins <= low.length) return low;
  return realSpectrum(samples, nextPowerOfTwo(samples.length));
}

function transform(samples: Float64Array): Whole {
  const kept = known.get(samples);
  if (kept) return kept;
  const size = nextPowerOfTwo(samples.length);
  const spectrum = passingSpectrum(samples, size);
  const low = spectrum.slice(0, 2 * Math.floor((keptShare * size) / 2) + 2);
  const whole = { low, power: powerOf(spectrum) };
  known.set(samples, whole);
  return whole;
}

/** |X|² of every bin, in what `room` gives. */
export function powerOf(spectrum: HalfSpectrum, room = newRoom): Float64Array {
  const power = room(spectrum.length / 2);
  for (let k = 0; k < power.length; k++) {
    const re = spectrum[2 * k] ?? 0;
    const im = spectrum[2 * k + 1] ?? 0;
    power[k] = re * re + im * im;
  }
  return power;
}
