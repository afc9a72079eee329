import { recordPart } from './second-clock';

/** Samples on either side that the recorder's interpolation may reach. */
const reach = 40;

/**
 * Reads a signal that repeats without end on another clock: frames `from` … `from + length` of the
 * recorder, whose frame n holds the signal at n/ratio. Throws RangeError for an empty period.
 */
export function recordPeriodic(
  period: Float64Array,
  ratio: number,
  from: number,
  length: number,
): Float64Array {
  if (period.length === 0) throw new RangeError('a period must have samples, got 0');
  const place = from / ratio;
  const whole = Math.floor(place);
  const around = new Float64Array(Math.ceil(length / ratio) + 2 * reach + 1);
  let at = (((whole - reach) % period.length) + period.length) % period.length;
  for (let n = 0; n < around.length; n++) {
    around[n] = period[at] ?? 0;
    at = at + 1 === period.length ? 0 : at + 1;
  }
  const out = new Float64Array(length);
  recordPart(around, ratio, -ratio * (place - whole + reach), out, 0, length);
  return out;
}

/** Folds a signal back onto its own beginning: what a response becomes when all of it repeats. */
export function foldPeriodic(signal: Float64Array, length: number): Float64Array {
  const folded = new Float64Array(length);
  for (let n = 0; n < signal.length; n++) {
    folded[n % length] = (folded[n % length] ?? 0) + (signal[n] ?? 0);
  }
  return folded;
}
