import { impulseTaps } from './fractional-delay';

const taps = 64;
const phases = 512;

/**
 * What a recorder on another clock writes down of a signal. Recorded sample n is the signal at
 * (n − latency)/ratio, so ratio = 1 + skew·10⁻⁶ (times the ratio of the rates); nothing before and
 * after the signal. `latency` in recorded samples, may be fractional. Ratios well below 1 would
 * alias: throws RangeError outside 0.9 … 4. Yields nothing in between: long signals take a while.
 */
export function recordOnClock(
  signal: ArrayLike<number>,
  ratio: number,
  latency: number,
  length: number,
): Float64Array {
  const out = new Float64Array(length);
  recordPart(signal, ratio, latency, out, 0, length);
  return out;
}

/** The same for samples `from` … `to` of `out` only, so that a caller can pause in between. */
export function recordPart(
  signal: ArrayLike<number>,
  ratio: number,
  latency: number,
  out: Float64Array | Float32Array,
  from: number,
  to: number,
): void {
  if (!(ratio >= 0.9 && ratio <= 4)) {
    throw new RangeError(`ratio must lie between 0.9 and 4, got ${ratio}`);
  }
  const size = signal.length;
  for (let n = from; n < to; n++) {
    const place = (n - latency) / ratio;
    const whole = Math.floor(place);
    const first = whole - taps / 2 + 1;
    if (first + taps <= 0 || first >= size) {
      out[n] = 0;
      continue;
    }
    const phase = (place - whole) * phases;
    const row = Math.floor(phase);
    const share = phase - row;
    const here = row * taps;
    let a = 0;
    let b = 0;
    const start = Math.max(0, -first);
    const stop = Math.min(taps, size - first);
    for (let k = start; k < stop; k++) {
      const value = signal[first + k] ?? 0;
      a += value * (kernels[here + k] ?? 0);
      b += value * (kernels[here + taps + k] ?? 0);
    }
    out[n] = a + share * (b - a);
  }
}

/** Kernels of the fractions 0 … 1, one row each; in between they are interpolated. */
const kernels = ((): Float64Array => {
  const table = new Float64Array((phases + 1) * taps);
  for (let phase = 0; phase <= phases; phase++) {
    table.set(impulseTaps(phase / phases, taps), phase * taps);
  }
  return table;
})();
