const tables = new Map<number, Float64Array>();
/** Half the filter's length, in samples of the thinned signal. */
const halfTaps = 12;

/**
 * Every `factor`-th sample of a signal, low-passed: flat within 0.1 dB up to 0.35 of the new rate,
 * 80 dB down from 0.65 on. Entry n stands at sample n·factor. Throws RangeError for a factor that is
 * not whole and positive. Common practice (windowed sinc).
 */
export function decimate(signal: Float64Array, factor: number): Float64Array {
  if (!Number.isInteger(factor) || factor < 1) {
    throw new RangeError(`factor must be whole and positive, got ${factor}`);
  }
  const taps = lowPass(factor);
  const half = halfTaps * factor;
  const out = new Float64Array(Math.ceil(signal.length / factor));
  // Reading beyond an array's ends is slow.
  const padded = new Float64Array(signal.length + 2 * half + factor);
  padded.set(signal, half);
  for (let n = 0; n < out.length; n++) {
    const middle = n * factor + half;
    let sum = (taps[0] ?? 0) * (padded[middle] ?? 0);
    for (let k = 1; k < half; k++) {
      sum += (taps[k] ?? 0) * ((padded[middle - k] ?? 0) + (padded[middle + k] ?? 0));
    }
    out[n] = sum;
  }
  return out;
}

/** Right half of the filter, from its middle on. */
function lowPass(factor: number): Float64Array {
  const known = tables.get(factor);
  if (known) return known;
  const half = halfTaps * factor;
  const taps = new Float64Array(half);
  let sum = 0;
  for (let k = 0; k < half; k++) {
    const turn = (Math.PI * k) / factor;
    const sinc = k === 0 ? 1 : Math.sin(turn) / turn;
    const x = (Math.PI * k) / half;
    const window = 0.42 + 0.5 * Math.cos(x) + 0.08 * Math.cos(2 * x);
    taps[k] = sinc * window;
    sum += (k === 0 ? 1 : 2) * (taps[k] ?? 0);
  }
  for (let k = 0; k < half; k++) taps[k] = (taps[k] ?? 0) / sum;
  tables.set(factor, taps);
  return taps;
}
