import type { PowerSpectrum } from '../response/power-spectrum';
import { bandShares } from './band-level';
import { powerToDb } from './decibels';

/** 95 % quantile of the normal distribution. */
const quantile95 = 1.645;
/** With fewer degrees of freedom the quantile's expansion does not hold. */
const leastFreedom = 4;
/** The lower end is told no farther under the level than this, dB. */
const lowestDb = 20;

/** How long sound and noise were heard; all in seconds, and positive. */
export interface HeardLengths {
  /** The response; zeros may follow it. */
  readonly responseSeconds: number;
  /** The noise's response. */
  readonly hissSeconds: number;
  /** The silence that gave the noise's response; a shorter one stands in it repeated. */
  readonly silenceSeconds: number;
}

/**
 * 90 % interval, dB, of the level 10 lg(P − N) of a band: P = bandPower(heard), and N that of
 * `hiss`, silence through the same deconvolution, for as long as the response lasts. Both are
 * spectra of responses without a window, with bins of one width. Null unless P > N. Throws
 * RangeError for a length that is not positive, and as bandPower.
 *
 * On each independent line, 1/responseSeconds wide, the noise adds to the sound with a phase of its
 * own: with power S of the sound and n of the noise in the mean, theirs together has the variance
 * 2 S n + n² (noncentral χ² of two degrees of freedom; Abramowitz and Stegun 26.4, from memory). The
 * mean n that is taken off rests on lines of the silence, 1/silenceSeconds wide, and adds n² on each
 * of them. Lines count as bandPower weighs them. n² is half the mean square of a line of hiss, or
 * less by as often as the silence was repeated, which leaves gaps between its lines. An end is where
 * the true level lies as many of its own deviations off as Student's 95 % quantile says, 2 S n
 * growing with S (as the interval of a share; Wilson, JASA 22, 1927): the variance itself is known
 * from few lines where a room lets few sound (degrees of freedom by Satterthwaite, 1946).
 *
 * Left out: noise that grew or fell after the silence, and what else moves a level than noise.
 */
export function levelInterval(
  heard: PowerSpectrum,
  hiss: PowerSpectrum,
  [lowHz, highHz]: readonly [number, number],
  { responseSeconds, hissSeconds, silenceSeconds }: HeardLengths,
): readonly [number, number] | null {
  if (!(responseSeconds > 0 && hissSeconds > 0 && silenceSeconds > 0)) {
    const got = `${responseSeconds}, ${hissSeconds} and ${silenceSeconds}`;
    throw new RangeError(`lengths must be positive, got ${got}`);
  }
  const lasting = responseSeconds / hissSeconds;
  const knownSeconds = Math.min(hissSeconds, silenceSeconds);
  const repeated = hissSeconds / knownSeconds;
  const binsOfHeard = 1 / (responseSeconds * heard.hzPerBin);
  const binsOfSilence = 1 / (knownSeconds * heard.hzPerBin);
  let [own, cross, square, unsure] = [0, 0, 0, 0];
  const { first, shares } = bandShares(heard, lowHz, highHz);
  for (let k = 0; k < shares.length; k++) {
    const share = shares[k] ?? 0;
    const whole = heard.power[first + k] ?? 0;
    const noise = lasting * (hiss.power[first + k] ?? 0);
    const noiseSquared = noise ** 2 / (2 * repeated);
    own += share * (whole - noise);
    const crossHere = share ** 2 * binsOfHeard * 2 * (whole * noise - noiseSquared);
    const squareHere = share ** 2 * (binsOfHeard + binsOfSilence) * noiseSquared;
    cross += crossHere;
    square += squareHere;
    unsure += ((crossHere + squareHere) ** 2 * binsOfSilence) / (2 * repeated);
  }
  if (!(own > 0)) return null;
  const squared = studentQuantile95((2 * (cross + square) ** 2) / unsure) ** 2;
  const slope = (squared * Math.max(0, cross)) / own;
  const half = Math.sqrt(slope * own + squared * square + slope ** 2 / 4);
  const middle = own + slope / 2;
  const least = own * 10 ** (-lowestDb / 10);
  return [powerToDb(Math.max(middle - half, least)), powerToDb(middle + half)];
}

/** Cornish and Fisher's expansion to its second term; Abramowitz and Stegun 26.7.5, from memory. */
function studentQuantile95(freedom: number): number {
  const z = quantile95;
  // No noise at all leaves 0/0, and nothing to multiply.
  const most = freedom > leastFreedom ? freedom : leastFreedom;
  return z + (z ** 3 + z) / (4 * most) + (5 * z ** 5 + 16 * z ** 3 + 3 * z) / (96 * most ** 2);
}
