import type { DecayCurve } from './decay-curve';

/** A straight line through part of a decay curve. */
export interface DecayFit {
  /** Time in which 60 dB are lost, s. */
  readonly seconds: number;
  /** Standard deviation of ln(seconds): the room's scatter from place to place, and the noise. */
  readonly deviation: number;
  /** 1000(1 − r²), r the correlation of level and time; ‰. ISO 3382-2, annex B. */
  readonly nonLinearity: number;
  /** How many dB of the range the curve holds. */
  readonly coveredDb: number;
}

const leastPoints = 5;
/** The energy added beyond the knee may be off by this share of it. */
const addedError = 0.3;
const nepersFor60 = 6 * Math.LN10;

/**
 * Least squares through the levels of a decay curve from topDb down to bottomDb re its whole
 * energy. Null for fewer than 5 points there or no fall. `widthHz` is the band's width.
 *
 * The deviation follows from the covariance of the remaining energy, cov(E(s), E(t)) = V(max(s, t)),
 * V = (kE²/2 + 2NE + N²(tc − t))/B, which holds for a decay of Gaussian noise; without noise the
 * slope's is then 0.88/√(BT) over 20 dB and 0.55/√(BT) over 30 dB, as in ISO 3382-2:2008 for many
 * decays averaged at one place (from memory). See also Davy, Dunn and Dubout, Acustica 43 (1979).
 */
export function fitDecay(
  curve: DecayCurve,
  topDb: number,
  bottomDb: number,
  widthHz: number,
): DecayFit | null {
  const { remaining, stepSeconds } = curve;
  const levels = remaining.map((energy) => 10 * Math.log10(energy));
  const first = levels.findIndex((level) => level <= topDb + 1e-9);
  if (first < 0) return null;
  const below = levels.findIndex((level, n) => n >= first && level < bottomDb - 1e-9);
  const end = below < 0 ? levels.length : below;
  const count = end - first;
  if (count < leastPoints) return null;
  const middle = (first + end - 1) / 2;
  const mean = sumOf(first, end, (n) => levels[n] ?? 0) / count;
  const xx = sumOf(first, end, (n) => (n - middle) ** 2);
  const xy = sumOf(first, end, (n) => (n - middle) * ((levels[n] ?? 0) - mean));
  const yy = sumOf(first, end, (n) => ((levels[n] ?? 0) - mean) ** 2);
  const seconds = (-60 * xx * stepSeconds) / xy;
  if (!(seconds > 0 && seconds < Infinity && yy > 0)) return null;
  const weights = Float64Array.from({ length: count }, (_, n) => (first + n - middle) / xx);
  const rate = nepersFor60 / seconds;
  const slopeVariance = varianceOfSlope(curve, first, weights, rate, widthHz);
  return {
    seconds,
    deviation: Math.sqrt(slopeVariance) / (rate * stepSeconds),
    nonLinearity: 1000 * Math.max(0, 1 - xy ** 2 / (xx * yy)),
    coveredDb: (levels[first] ?? 0) - (levels[end - 1] ?? 0),
  };
}

/** Variance of Σ w ln E, with the covariance of fitDecay. */
function varianceOfSlope(
  curve: DecayCurve,
  first: number,
  weights: Float64Array,
  rate: number,
  widthHz: number,
): number {
  const { remaining, stepSeconds, kneeSeconds, noise, noiseError, added } = curve;
  let variance = 0;
  let before = 0;
  for (let n = 0; n < weights.length; n++) {
    const energy = remaining[first + n] ?? 1;
    const left = kneeSeconds - (first + n) * stepSeconds;
    const spread = (rate * energy ** 2) / 2 + 2 * noise * energy + noise ** 2 * left;
    const common = (noiseError * noise * left) ** 2 + (addedError * added) ** 2;
    const own = spread / widthHz + common;
    const share = (weights[n] ?? 0) / energy;
    variance += share * own * (share + 2 * before);
    before += share;
  }
  return Math.max(variance, 0);
}

function sumOf(from: number, to: number, term: (n: number) => number): number {
  let sum = 0;
  for (let n = from; n < to; n++) sum += term(n);
  return sum;
}
