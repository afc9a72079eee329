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
  if (isSilent(signal, (from - latency) / ratio - taps / 2, (to - latency) / ratio + taps / 2)) {
    out.fill(0, from, to);
    return;
  }
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
    if (first >= 0 && first + taps <= size) {
      out[n] = between(signal, first, kernels, here, share);
      continue;
    }
    let sum = 0;
    for (let k = Math.max(0, -first); k < Math.min(taps, size - first); k++) {
      const a = kernels[here + k] ?? 0;
      sum += (signal[first + k] ?? 0) * (a + share * ((kernels[here + taps + k] ?? 0) - a));
    }
    out[n] = sum;
  }
}

/** Whether nothing but zeros lies between two places, which may lie outside the signal. */
function isSilent(signal: ArrayLike<number>, from: number, to: number): boolean {
  const end = Math.min(signal.length, Math.ceil(to) + 1);
  for (let n = Math.max(0, Math.floor(from)); n < end; n++) if (signal[n] !== 0) return false;
  return true;
}

/** The signal from `first` on through two kernels of `table`, in between by `share`; two sums each. */
function between(
  signal: ArrayLike<number>,
  first: number,
  table: Float64Array,
  here: number,
  share: number,
): number {
  let a = 0;
  let b = 0;
  let c = 0;
  let d = 0;
  for (let k = 0; k < taps; k += 2) {
    const at = here + k;
    const even = signal[first + k] ?? 0;
    const odd = signal[first + k + 1] ?? 0;
    a += even * (table[at] ?? 0);
    b += even * (table[at + taps] ?? 0);
    c += odd * (table[at + 1] ?? 0);
    d += odd * (table[at + taps + 1] ?? 0);
  }
  return a + c + share * (b + d - (a + c));
}

/** Kernels of the fractions 0 … 1, one row each; in between they are interpolated. */
const kernels = ((): Float64Array => {
  const table = new Float64Array((phases + 1) * taps);
  for (let phase = 0; phase <= phases; phase++) {
    table.set(impulseTaps(phase / phases, taps), phase * taps);
  }
  return table;
})();
