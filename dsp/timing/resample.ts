import { captureSample, type Clock } from './clock';
import { sincTable } from './sinc-table';
import type { Samples } from '../signal/samples';

/**
 * A stretch of the capture on the stimulus clock: entry n is what was heard at the stimulus sample
 * startSample + n, by the opening mark of segment `index`. Windowed sinc of 48 zero crossings each
 * side, cut off at half the lower of the two rates: error below −100 dB up to 20 kHz at 48 kHz.
 * 0 outside the capture and for what is no finite number. Throws RangeError for a segment that is
 * not there or lengths that are not whole.
 */
export function resampleToStimulus(
  capture: Samples,
  clock: Clock,
  index: number,
  startSample: number,
  lengthSamples: number,
): Float64Array {
  if (!Number.isInteger(lengthSamples) || lengthSamples < 0) {
    throw new RangeError(`lengthSamples must be whole and at least 0, got ${lengthSamples}`);
  }
  if (!Number.isFinite(startSample)) {
    throw new RangeError(`startSample must be finite, got ${startSample}`);
  }
  const cutoff = Math.min(1, clock.stimulusRate / clock.captureRate);
  const from = captureSample(clock, index, startSample);
  return readBetween(capture, from, clock.ratio, lengthSamples, cutoff);
}

/**
 * Values of `signal` at from, from + step, … (fractional indices), `length` of them, band-limited
 * to `cutoff` times half its rate; 0 outside and for what is no finite number. Throws RangeError
 * for a step that is not positive and a cutoff outside 0 … 1.
 */
export function readBetween(
  signal: Samples,
  from: number,
  step: number,
  length: number,
  cutoff = 1,
): Float64Array {
  if (!(step > 0 && step < Infinity)) throw new RangeError(`step must be positive, got ${step}`);
  const { values, phases, reach } = sincTable(cutoff);
  const width = 2 * reach;
  const result = new Float64Array(length);
  const padded = paddedPiece(signal, from, from + step * Math.max(0, length - 1), reach);
  const origin = Math.floor(from) - reach;
  for (let n = 0; n < length; n++) {
    const at = from + step * n;
    const whole = Math.floor(at);
    const along = (at - whole) * phases;
    const row = Math.floor(along);
    const blend = along - row;
    const lower = row * width;
    const upper = lower + width;
    const first = whole - reach + 1 - origin;
    let low = 0;
    let high = 0;
    for (let tap = 0; tap < width; tap++) {
      const value = padded[first + tap] ?? 0;
      low += value * (values[lower + tap] ?? 0);
      high += value * (values[upper + tap] ?? 0);
    }
    result[n] = low + blend * (high - low);
  }
  return result;
}

/** signal from floor(from) − reach to floor(to) + reach + 1, zeros outside. */
function paddedPiece(signal: Samples, from: number, to: number, reach: number): Float64Array {
  const start = Math.floor(from) - reach;
  const piece = new Float64Array(Math.max(0, Math.floor(to) + reach + 2 - start));
  const end = Math.min(piece.length, signal.length - start);
  for (let n = Math.max(0, -start); n < end; n++) {
    const value = signal[start + n] ?? 0;
    piece[n] = Number.isFinite(value) ? value : 0;
  }
  return piece;
}
