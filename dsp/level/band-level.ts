import type { ImpulseResponse } from '../response/impulse-response';
import { powerSpectrum, type PowerSpectrum } from '../response/power-spectrum';
import { newRoom, scratch } from '../signal/scratch';
import { powerToDb } from './decibels';

/**
 * Level in dB that steady pink noise between lowHz and highHz would have behind this response,
 * re the same noise before it; see bandPower. Not below −300 dB.
 */
export function bandLevelDb(ir: ImpulseResponse, lowHz: number, highHz: number): number {
  return powerToDb(bandPower(powerSpectrum(ir, lowHz / 40), lowHz, highHz));
}

/**
 * Mean of |H|² over log frequency, ∫|H|²/f df / ln(f2/f1): what pink noise weighs equally.
 * Throws RangeError unless 0 < lowHz < highHz ≤ half the sample rate.
 */
export function bandPower(spectrum: PowerSpectrum, lowHz: number, highHz: number): number {
  const { power } = spectrum;
  const { first, shares } = bandShares(spectrum, lowHz, highHz, passing);
  let sum = 0;
  for (let k = 0; k < shares.length; k++) sum += (shares[k] ?? 0) * (power[first + k] ?? 0);
  return sum;
}

/** Shares of the bins from `first` on in a mean over log frequency; they sum to 1. */
export interface BandShares {
  readonly first: number;
  readonly shares: Float64Array;
}

const passing = scratch();

/** The shares of the bins of a band, in what `room` gives. Throws as bandPower. */
export function bandShares(
  { power, hzPerBin }: PowerSpectrum,
  lowHz: number,
  highHz: number,
  room = newRoom,
): BandShares {
  const top = (power.length - 1) * hzPerBin;
  if (!(lowHz > 0 && lowHz < highHz && highHz <= top)) {
    throw new RangeError(`a band needs 0 < lowHz < highHz ≤ ${top}, got ${lowHz}, ${highHz}`);
  }
  const whole = Math.log(highHz / lowHz);
  const first = Math.round(lowHz / hzPerBin);
  const last = Math.min(Math.round(highHz / hzPerBin), power.length - 1);
  const shares = room(last - first + 1);
  for (let k = first; k <= last; k++) {
    const from = Math.max((k - 0.5) * hzPerBin, lowHz);
    const to = Math.min((k + 0.5) * hzPerBin, highHz);
    shares[k - first] = to > from ? logRatio(to, from) / whole : 0;
  }
  return { first, shares };
}

/** ln(to/from) = 2 artanh u, u = (to − from)/(to + from): four terms are enough where u is small. */
function logRatio(to: number, from: number): number {
  const u = (to - from) / (to + from);
  if (u > 0.01) return Math.log(to / from);
  const u2 = u * u;
  return 2 * u * (1 + u2 * (1 / 3 + u2 * (1 / 5 + u2 / 7)));
}
