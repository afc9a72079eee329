import type { ImpulseResponse } from '../response/impulse-response';
import { checkedArrival } from './checked-arrival';

export interface StepOptions {
  /** When the sound arrives, s after zero delay; left out: the largest sample. */
  readonly arrivalSeconds?: number;
  /** Seconds before and after the arrival that are told; default 0.001 and 0.01. */
  readonly beforeSeconds?: number;
  readonly afterSeconds?: number;
}

/** What a speaker makes of a step; entry n of one belongs to entry n of the other. */
export interface StepResponse {
  /** Seconds after the arrival. */
  readonly seconds: Float64Array;
  /** Re its largest magnitude, sign kept. */
  readonly value: Float64Array;
}

/** The baseline is read over so many seconds before the sum begins. */
const baselineSeconds = 0.005;

/**
 * Step response: running sum of the samples from shortly before the arrival, re its largest. A
 * sweep that starts above 0 Hz lets a response ring slowly to both sides of the arrival, which sums
 * up to a slope; its mean over the 5 ms before the sum begins is taken off every sample first. That
 * holds for spans well below the period of the sweep's start. All 0 for silence. Throws RangeError
 * for an arrival outside the response or spans that are not positive. Common practice.
 */
export function stepResponse(ir: ImpulseResponse, options: StepOptions = {}): StepResponse {
  const { beforeSeconds = 0.001, afterSeconds = 0.01 } = options;
  if (!(beforeSeconds >= 0 && afterSeconds > 0)) {
    throw new RangeError(`spans must be positive, got ${beforeSeconds}, ${afterSeconds}`);
  }
  const { samples, sampleRate, zeroIndex } = ir;
  const origin = zeroIndex + checkedArrival(ir, options.arrivalSeconds) * sampleRate;
  const from = Math.max(0, Math.ceil(origin - beforeSeconds * sampleRate));
  const to = Math.min(samples.length, Math.floor(origin + afterSeconds * sampleRate) + 1);
  const before = samples.subarray(
    Math.max(0, from - Math.round(baselineSeconds * sampleRate)),
    from,
  );
  const baseline = before.reduce((sum, one) => sum + one, 0) / Math.max(1, before.length);
  let sum = 0;
  let largest = 0;
  const sums = samples.slice(from, to).map((value) => {
    sum += value - baseline;
    largest = Math.max(largest, Math.abs(sum));
    return sum;
  });
  return {
    seconds: sums.map((_, n) => (from + n - origin) / sampleRate),
    value: largest > 0 ? sums.map((one) => one / largest) : sums,
  };
}
