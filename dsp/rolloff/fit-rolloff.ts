import { boxShapes, type BoxFamily, type BoxShape } from './box-models';
import { prepareProblem } from './fit-problem';
import { freeLevelDb, searchModels } from './model-search';
import { weightsOf } from './posterior';
import { readPosterior, type RolloffFit } from './read-posterior';
import { widestFit } from './widest-fit';
import type { RolloffBands } from './rolloff-bands';
import type { Place } from './room-residual';

/** How a reading was taken and what is known beforehand. */
export interface RolloffOptions {
  /** 'room': at a seat. 'close': at the driver, or cone and port summed by area. */
  readonly place: 'room' | 'close';
  /** Positions averaged in the bands; 1 when not given. */
  readonly positions?: number;
  /** Speakers of one model averaged in the bands; 1 when not given. */
  readonly sameModel?: number;
  /** Where the stimulus is at full strength: bands below are left out. */
  readonly lowerHz?: number;
  /** Highest band used, 60 or more; about 90 for subs behind a low-pass. */
  readonly upperHz?: number;
  /** f3 on the speaker's sheet, 5 … 500, trusted to ±15 %. */
  readonly sheetF3Hz?: number;
  /** Close to the cone of a box whose port was not captured. */
  readonly coneOnly?: boolean;
}

/** Why a reading cannot support a roll-off. */
export interface RolloffRefusal {
  /** 'too few bands': the options leave fewer than 12. 'noise': fewer than 12 stand above it. */
  readonly refused: 'too few bands' | 'noise';
  /** Bands that stand 6 dB or more above the noise. */
  readonly bandsWithMargin: number;
}

const MARGIN_DB = 6;
const FEWEST_BANDS = 12;
/** Probability above which the box type is told. */
const CERTAIN = { room: 0.8, close: 0.95 } as const;
/** Below this margin anywhere, the fit is made twice: see fitRolloff. */
const NOISE_COUNTS_DB = 20;
const LOW_FLOOR = 0.03;
/** Twice the interval where port and room leak into the cone's field by a guess. */
const CONE_WIDENING = 4;

/**
 * Roll-off of a speaker from its bass in bands: the posterior over closed and vented box models,
 * given that the room adds a Gaussian process in dB of known mean and covariance. In a room the
 * likelihood looks at power means over seven bands. Noise raises the floor under data and models
 * alike and the variance of each band by what it does to the level. A raised floor can hide what
 * would have widened the interval, so noisy bands are fitted once more on a low floor, where noise
 * only adds variance, and the wider of both intervals is given: noise does not narrow it.
 * Refuses (a value, not an error) when fewer than 12 bands stand 6 dB above the noise.
 * Throws RangeError for options out of range. Own method; accuracy: tests/accuracy.
 */
export function fitRolloff(
  bands: RolloffBands,
  options: RolloffOptions,
): RolloffFit | RolloffRefusal {
  const place = { ...placeOf(options), decaySeconds: bands.decaySeconds };
  const { sheetF3Hz = null, coneOnly = false } = options;
  const { first, last } = bandRange(bands, options);
  const margins = bands.marginDb.subarray(first, last + 1);
  const bandsWithMargin = margins.filter((margin) => margin >= MARGIN_DB).length;
  if (last - first + 1 < FEWEST_BANDS) return { refused: 'too few bands', bandsWithMargin };
  if (bandsWithMargin < FEWEST_BANDS) return { refused: 'noise', bandsWithMargin };
  const isClose = place.place === 'close';
  const family: BoxFamily = !isClose ? 'plain' : coneOnly ? 'cone' : 'wide';
  const shapes = boxShapes(family);
  const usableHz = bands.hz[first + margins.findIndex((one) => one >= MARGIN_DB)] ?? Infinity;
  const fitWith = (noiseShare: number): RolloffFit => {
    const widen = coneOnly ? CONE_WIDENING : 1;
    const problem = prepareProblem(bands, first, last, place, widen, noiseShare);
    const { logs, cellSteps } = searchModels(problem, shapes, sheetF3Hz, isClose);
    const passbandDb = (shape: BoxShape, step: number): number => freeLevelDb(problem, shape, step);
    const certain = CERTAIN[place.place];
    return readPosterior(shapes, weightsOf(logs), { cellSteps, certain, passbandDb, usableHz });
  };
  const fit = fitWith(1);
  return Math.min(...margins) < NOISE_COUNTS_DB ? widestFit(fit, fitWith(LOW_FLOOR)) : fit;
}

/** True for a refusal. */
export function isRefusal(fit: RolloffFit | RolloffRefusal): fit is RolloffRefusal {
  return 'refused' in fit;
}

function placeOf(options: RolloffOptions): Omit<Place, 'decaySeconds'> {
  const { place, positions = 1, sameModel = 1, upperHz = 500, lowerHz = 0 } = options;
  if (!(positions >= 1)) throw new RangeError(`positions must be at least 1, got ${positions}`);
  if (!(sameModel >= 1)) throw new RangeError(`sameModel must be at least 1, got ${sameModel}`);
  if (!(upperHz >= 60)) throw new RangeError(`upperHz must be at least 60, got ${upperHz}`);
  if (!(lowerHz >= 0)) throw new RangeError(`lowerHz must not be negative, got ${lowerHz}`);
  const sheet = options.sheetF3Hz;
  if (sheet !== undefined && !(sheet >= 5 && sheet <= 500)) {
    throw new RangeError(`sheetF3Hz must lie between 5 and 500, got ${sheet}`);
  }
  if (options.coneOnly && place !== 'close') {
    throw new RangeError(`coneOnly goes with place close, got ${place}`);
  }
  return { place, positions, sameModel };
}

/** First and last band between the limits, inclusive. */
function bandRange(
  { hz }: RolloffBands,
  { lowerHz = 0, upperHz = 500 }: RolloffOptions,
): { readonly first: number; readonly last: number } {
  const inside = [...hz.keys()].filter((k) => (hz[k] ?? 0) >= lowerHz && (hz[k] ?? 0) <= upperHz);
  return { first: inside[0] ?? 0, last: inside[inside.length - 1] ?? -1 };
}

export type { RolloffFit };
