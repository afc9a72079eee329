import { fadeGain } from '../signal/fade';
import { sweepRateSeconds, type SweepSpec } from '../signal/sweep';

/** A stretch of a deconvolved sweep with faded ends; numbers in samples. */
export interface HarmonicWindow {
  readonly order: number;
  /** Index in the response, fractional places rounded. */
  readonly start: number;
  /** Samples from its start to the arrival. */
  readonly lead: number;
  readonly gains: Float64Array;
  /** Σ gain². */
  readonly energy: number;
}

/** The response of the highest order is read only to know its tail. */
export const orders = [2, 3, 4, 5, 6] as const;
export const highestOrder = 6;
/** Orders up to this are told. */
export const highestToldOrder = 5;

/** The linear window starts so long before its arrival: a fixed part, and periods of the sweep's end. */
const leadSeconds = 0.002;
const leadPeriods = 4;
/**
 * Others start earlier, by this share of their spacing: a harmonic of even order turns by a quarter,
 * and its bass begins before its arrival.
 */
const leadShare = 0.15;
/** Share of a window in which it fades out. */
const fadeShare = 0.15;

/** Seconds that a deconvolution must reach before an arrival to hold all orders. */
export function harmonicLeadSeconds(sweep: SweepSpec): number {
  const rate = sweepRateSeconds(sweep);
  return rate * Math.log(highestOrder) + leadOf(sweep, highestOrder) + 1 / sweep.sampleRate;
}

/**
 * One window per order 2 … 6: from a little before its response, L·ln k before the linear one at
 * `arrivalIndex`, to the window of the order below. Source: Farina, AES 108 (2000); Novak, JAES 63
 * (2015).
 */
export function harmonicWindows(
  sweep: SweepSpec,
  sampleRate: number,
  arrivalIndex: number,
): HarmonicWindow[] {
  const rate = sweepRateSeconds(sweep) * sampleRate;
  const leadSamples = (order: number): number => Math.round(leadOf(sweep, order) * sampleRate);
  const startOf = (order: number): number =>
    Math.round(arrivalIndex - rate * Math.log(order)) - leadSamples(order);
  return orders.map((order) => {
    const start = startOf(order);
    const lead = leadSamples(order);
    return { order, start, lead, ...gainsOf(startOf(order - 1) - start, lead) };
  });
}

/** Window of `length` samples from the arrival of the linear response on. */
export function linearWindow(
  sweep: SweepSpec,
  sampleRate: number,
  arrivalIndex: number,
  length: number,
): HarmonicWindow {
  const lead = Math.round(leadOf(sweep, 1) * sampleRate);
  return { order: 1, start: Math.round(arrivalIndex) - lead, lead, ...gainsOf(length, lead) };
}

function leadOf(sweep: SweepSpec, order: number): number {
  const least = leadSeconds + leadPeriods / sweep.endHz;
  if (order === 1) return least;
  return least + leadShare * sweepRateSeconds(sweep) * Math.log(order / (order - 1));
}

function gainsOf(length: number, fadeIn: number): Pick<HarmonicWindow, 'gains' | 'energy'> {
  const gains = new Float64Array(Math.max(length, 0)).fill(1);
  const rise = Math.min(fadeIn, gains.length >> 2);
  const fall = Math.round(fadeShare * gains.length);
  for (let n = 0; n < rise; n++) gains[n] = fadeGain(n, rise);
  for (let n = 0; n < fall; n++) gains[gains.length - 1 - n] = fadeGain(n, fall);
  return { gains, energy: gains.reduce((sum, gain) => sum + gain * gain, 0) };
}
