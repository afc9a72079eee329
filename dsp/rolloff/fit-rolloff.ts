import { boxShapes, type BoxFamily, type BoxShape } from './box-models';
import { prepareClose, type FitProblem } from './fit-problem';
import { freeLevelDb, searchModels } from './model-search';
import { weightsOf } from './posterior';
import { readPosterior, type RolloffFit } from './read-posterior';
import { BAND_COUNT, marginsDb, type RolloffBands } from './rolloff-bands';
import { prepareSeats } from './seat-problem';
import type { Likeness } from './seat-residual';
import { widestFit } from './widest-fit';

/** How a reading was taken and what is known beforehand. */
export interface RolloffOptions {
  /** 'room': at a seat. 'close': at the driver, or cone and port summed by area. */
  readonly place: 'room' | 'close';
  /** Where the stimulus is at full strength: bands below are left out. */
  readonly lowerHz?: number;
  /** Highest band used, 60 or more; about 90 for subs behind a low-pass. */
  readonly upperHz?: number;
  /** f3 on the speaker's sheet, 5 … 500, trusted to ±15 %. */
  readonly sheetF3Hz?: number;
  /** Close to the cone of a box whose port was not captured. */
  readonly coneOnly?: boolean;
  /** Cone and port summed: see coneAndPort. */
  readonly summed?: boolean;
}

/** One of several readings at seats: of which speaker, counted from wherever. */
export interface SeatReading {
  readonly bands: RolloffBands;
  /** Readings of one loudspeaker have one name. */
  readonly speaker: string;
}

/** Why a reading cannot support a roll-off. */
export interface RolloffRefusal {
  /** 'too few bands': the options leave fewer than 12. 'noise': fewer than 12 stand above it. */
  readonly refused: 'too few bands' | 'noise';
  /** Bands that stand 6 dB or more above the noise. */
  readonly bandsWithMargin: number;
}

/** Below this the top of the range shows no passband: a sub. */
const PASSBAND_HZ = 180;
const MARGIN_DB = 6;
const FEWEST_BANDS = 12;
/** Probability above which the box type is told. */
const CERTAIN = { room: 0.8, close: 0.95 } as const;
/** Below this margin anywhere, the fit is made twice: see fitRolloff. */
const NOISE_COUNTS_DB = 20;
const LOW_FLOOR = 0.03;
/** Twice the interval where port and room leak into the cone's field by a guess. */
const CONE_WIDENING = 4;
/** Diameters, places and times of two openings are never quite right. */
const SUM_WIDENING = 1.6;

/**
 * Roll-off of a speaker from its bass in bands: the posterior over closed and vented box models,
 * given that the room adds a Gaussian process in dB of known mean and covariance. At a seat the
 * likelihood looks at power means over seven bands, of the whole response and of its early parts
 * under decaying windows, where room and box part: the room's modes ring long, the box does not.
 * Noise raises the floor under data and models alike and the variance of each band by what it does
 * to the level. A raised floor can hide what would have widened the interval, so noisy bands are
 * fitted once more on a low floor, where noise only adds variance, and the wider of both intervals
 * is given: noise does not narrow it.
 * Refuses (a value, not an error) when fewer than 12 bands stand 6 dB above the noise.
 * Throws RangeError for options out of range. Own method; accuracy: tests/accuracy.
 */
export function fitRolloff(
  bands: RolloffBands,
  options: RolloffOptions,
): RolloffFit | RolloffRefusal {
  if (options.place === 'room') return fitRolloffTogether([{ bands, speaker: '' }], options);
  const { coneOnly = false, summed = false } = options;
  const widen = coneOnly ? CONE_WIDENING : summed ? SUM_WIDENING : 1;
  return fitIn(bands, options, ({ first, last }, noiseShare) => ({
    problem: prepareClose(bands, first, last, widen, noiseShare),
    family: coneOnly ? 'cone' : 'wide',
  }));
}

/**
 * Roll-off from several readings at seats, of one speaker or of several of one model: levels
 * averaged in dB, and the statistics that belong to the average. Another seat of the same speaker
 * tells little, as its place in the room colours every seat alike; another place tells much.
 * Refuses and throws as fitRolloff does; RangeError for no readings.
 */
export function fitRolloffTogether(
  readings: readonly SeatReading[],
  options: Omit<RolloffOptions, 'place' | 'coneOnly'>,
): RolloffFit | RolloffRefusal {
  const [only] = readings;
  if (!only) throw new RangeError('readings must hold at least one, got none');
  // Behind a low-pass nothing tells when the sound sets out.
  const isSub = (options.upperHz ?? Infinity) < PASSBAND_HZ;
  const all = readings.map(({ bands }) => (isSub ? { ...bands, early: [] } : bands));
  const likeness = likenessOf(readings);
  return fitIn(
    readings.length === 1 ? only.bands : meanBands(all),
    options,
    (range, noiseShare) => ({
      problem: prepareSeats(all, { ...range, likeness, noiseShare }),
      family: 'seat',
    }),
  );
}

interface Range {
  readonly first: number;
  readonly last: number;
}

/** `bands` tell range and margins; `prepare` says what is fitted on which share of the noise. */
function fitIn(
  bands: RolloffBands,
  options: Omit<RolloffOptions, 'place'> & Partial<RolloffOptions>,
  prepare: (range: Range, noiseShare: number) => { problem: FitProblem; family: BoxFamily },
): RolloffFit | RolloffRefusal {
  requireOptions(options);
  const { sheetF3Hz = null, place = 'room' } = options;
  const range = bandRange(bands, options);
  const { first, last } = range;
  const margins = bands.marginDb.subarray(first, last + 1);
  const bandsWithMargin = margins.filter((margin) => margin >= MARGIN_DB).length;
  if (last - first + 1 < FEWEST_BANDS) return { refused: 'too few bands', bandsWithMargin };
  if (bandsWithMargin < FEWEST_BANDS) return { refused: 'noise', bandsWithMargin };
  const usableHz = bands.hz[first + margins.findIndex((one) => one >= MARGIN_DB)] ?? Infinity;
  const fitWith = (noiseShare: number): RolloffFit => {
    const { problem, family } = prepare(range, noiseShare);
    const shapes = boxShapes(family);
    const { logs, cellSteps } = searchModels(problem, shapes, sheetF3Hz, place === 'close');
    const passbandDb = (shape: BoxShape, step: number): number => freeLevelDb(problem, shape, step);
    const certain = CERTAIN[place];
    return readPosterior(shapes, weightsOf(logs), { cellSteps, certain, passbandDb, usableHz });
  };
  const fit = fitWith(1);
  return Math.min(...margins) < NOISE_COUNTS_DB ? widestFit(fit, fitWith(LOW_FLOOR)) : fit;
}

/** Powers and noise of several readings averaged: what of them stands above the noise. */
function meanBands(all: readonly RolloffBands[]): RolloffBands {
  const mean = (pick: (bands: RolloffBands) => Float64Array): Float64Array =>
    Float64Array.from({ length: BAND_COUNT }, (_, k) => {
      let sum = 0;
      for (const bands of all) sum += pick(bands)[k] ?? 0;
      return sum / all.length;
    });
  const power = mean((bands) => bands.power);
  const noisePower = mean((bands) => bands.noisePower);
  const [first] = all;
  return {
    hz: first?.hz ?? new Float64Array(BAND_COUNT),
    power,
    noisePower,
    lines: mean((bands) => bands.lines),
    marginDb: marginsDb(power, noisePower),
    early: [],
  };
}

function likenessOf(readings: readonly SeatReading[]): Likeness {
  const pairs = readings.length ** 2;
  const alike = readings.flatMap(({ speaker }) =>
    readings.filter((other) => other.speaker === speaker),
  );
  return { sameReading: readings.length / pairs, sameSpeaker: alike.length / pairs };
}

/** True for a refusal. */
export function isRefusal(fit: RolloffFit | RolloffRefusal): fit is RolloffRefusal {
  return 'refused' in fit;
}

function requireOptions(options: Partial<RolloffOptions>): void {
  const { place = 'room', upperHz = 500, lowerHz = 0, sheetF3Hz: sheet, coneOnly } = options;
  if (!(upperHz >= 60)) throw new RangeError(`upperHz must be at least 60, got ${upperHz}`);
  if (!(lowerHz >= 0)) throw new RangeError(`lowerHz must not be negative, got ${lowerHz}`);
  if (sheet !== undefined && !(sheet >= 5 && sheet <= 500)) {
    throw new RangeError(`sheetF3Hz must lie between 5 and 500, got ${sheet}`);
  }
  if (coneOnly && place !== 'close') {
    throw new RangeError(`coneOnly goes with place close, got ${place}`);
  }
}

/** First and last band between the limits, inclusive. */
function bandRange(
  { hz }: RolloffBands,
  { lowerHz = 0, upperHz = 500 }: Partial<RolloffOptions>,
): Range {
  const inside = [...hz.keys()].filter((k) => (hz[k] ?? 0) >= lowerHz && (hz[k] ?? 0) <= upperHz);
  return { first: inside[0] ?? 0, last: inside[inside.length - 1] ?? -1 };
}

export type { RolloffFit };
