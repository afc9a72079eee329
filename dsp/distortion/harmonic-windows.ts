import { sweepRateSeconds, type SweepSpec } from '../signal/sweep';

/** A stretch of a deconvolved sweep with faded ends; numbers in samples. */
export interface HarmonicWindow {
  readonly order: number;
  /** Index in the response, fractional places rounded. */
  readonly start: number;
  /** Samples from its start to the arrival. */
  readonly lead: number;
  readonly length: number;
  /** Halves of a raised cosine. */
  readonly fadeIn: number;
  readonly fadeOut: number;
  /** From its start to its end, and the same weighed by gain². */
  readonly lengthSeconds: number;
  readonly energySeconds: number;
}

/** The response of the highest order is read only to know its tail. */
export const orders = [2, 3, 4, 5, 6] as const;
export const highestOrder = 6;
/** Orders up to this are told. */
export const highestToldOrder = 5;

/** Windows start so long before an arrival: a fixed part, periods of the sweep's end, */
const leadSeconds = 0.002;
const leadPeriods = 4;
/**
 * and this share of the spacing: a harmonic of even order turns by a quarter, and its bass begins
 * before its arrival, as does a gain that depends on how far a cone moves. The linear response is
 * taken for one of order 1.5.
 */
const leadShare = 0.15;
/** Share of a window in which it fades out. */
const fadeShare = 0.15;
/** The linear response rings before its arrival where the sweep starts. */
const fadeShareOfSecond = 0.5;

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
    return { order, start, lead, ...shapeOf(startOf(order - 1) - start, lead, sampleRate, order) };
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
  return {
    order: 1,
    start: Math.round(arrivalIndex) - lead,
    lead,
    ...shapeOf(length, lead, sampleRate, 1),
  };
}

function leadOf(sweep: SweepSpec, order: number): number {
  const least = leadSeconds + leadPeriods / sweep.endHz;
  return (
    least + leadShare * sweepRateSeconds(sweep) * Math.log(order === 1 ? 1.5 : order / (order - 1))
  );
}

function shapeOf(length: number, lead: number, sampleRate: number, order: number) {
  const fadeIn = Math.min(lead, length >> 2);
  const fadeOut = Math.round((order === 2 ? fadeShareOfSecond : fadeShare) * length);
  // Half a raised cosine squared has a mean of 3/8.
  const energy = length - (5 / 8) * (fadeIn + fadeOut);
  return {
    length,
    fadeIn,
    fadeOut,
    lengthSeconds: length / sampleRate,
    energySeconds: energy / sampleRate,
  };
}
