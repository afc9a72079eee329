import { conesOnly, seatBoxes, wideBoxes, type BoxKind, type Candidate } from './box-families';
import { squared } from './complex';
import type { HighPassResponse } from './box-response';
import { crossingHz } from './crossing';
import { EARLY_SECONDS } from './early-part';
import { BAND_COUNT, LOWEST_BAND_HZ, rolloffBandHz } from './rolloff-bands';
import { SEAT_BANDS, SEAT_EARLY, SEAT_HALF_WIDTH, seatMeans } from './seat-levels';

/** One shape of roll-off; stands for models at every f0 of the grid. */
export interface BoxShape {
  readonly kind: BoxKind;
  /** Log of the prior mass of this shape among all; each kind has half. */
  readonly logPrior: number;
  /** Own response re the passband, dB, at f = f0·2^(u/36), u = LOWEST_STEP and up. */
  readonly levelDb: Float64Array;
  /**
   * Power the microphone meets, at the same u: the speaker's, or the cone's with what the room
   * returns; as a sum over u, u − 3, u − 6 … so that means over bands are two look-ups.
   */
  readonly heardSum: Float64Array;
  /** Mean of that power over an entry's bands, MEAN_STEPS wide, the last of them at u. */
  readonly means: PowerLevels;
  /** Power the early parts hold, see tabulateEarly; empty where only the whole is looked at. */
  readonly early: PowerLevels;
  /** f3/f0, f6/f0, f10/f0. */
  readonly ratios: readonly [number, number, number];
}

/** Powers of a table with what is asked of them again and again. */
export interface PowerLevels {
  readonly power: Float64Array;
  /** Natural logs; of 0 −Infinity. */
  readonly nepers: Float64Array;
}

/** Which boxes a fit tries; see box-families. */
export type BoxFamily = 'seat' | 'wide' | 'cone';

/** Steps of f0 per octave: 2 %. */
export const STEPS_PER_OCTAVE = 36;
/** Steps of f0 from one band to the next. */
export const STEPS_PER_BAND = 3;
/** f0 = 15·2^(i/36) Hz for i in this range: 8.9 to 231 Hz. */
export const FIRST_F0_STEP = -27;
export const LAST_F0_STEP = 142;
/** Curves are read at 15·2^(j/36) Hz for j in this range: 10 to 500 Hz. */
export const FIRST_CURVE_STEP = -21;
export const LAST_CURVE_STEP = 182;
/** From the first to the last band of a seat entry's mean. */
export const MEAN_STEPS = 2 * SEAT_HALF_WIDTH * STEPS_PER_BAND;
export const LOWEST_STEP = FIRST_CURVE_STEP - LAST_F0_STEP;
const HIGHEST_STEP = LAST_CURVE_STEP - FIRST_F0_STEP;
/** Models per shape. */
export const MODELS_PER_SHAPE = LAST_F0_STEP - FIRST_F0_STEP + 1;

/** Sound of the room at the cone, re the whole speaker's. */
const ROOM_AT_CONE = 10 ** -2.5;

const families = { seat: seatBoxes, wide: wideBoxes, cone: conesOnly };
const cache = new Map<BoxFamily, readonly BoxShape[]>();

/** Shapes of a family, tabulated once. */
export function boxShapes(family: BoxFamily): readonly BoxShape[] {
  const known = cache.get(family);
  if (known) return known;
  const shapes = families[family]().map((one) => tabulateShape(one, family === 'seat'));
  cache.set(family, shapes);
  return shapes;
}

function tabulateShape({ kind, share, whole, heard }: Candidate, atSeat: boolean): BoxShape {
  const power = tabulate((x) => squared(whole(x)));
  const atMicrophone =
    heard === whole ? power : tabulate((x) => squared(heard(x)) + ROOM_AT_CONE * squared(whole(x)));
  const ratio = (db: number): number => crossingHz(whole, db, 100, 0.01) ?? 1;
  const heardSum = sumOverBands(atMicrophone);
  const early = atSeat ? tabulateEarly(whole) : new Float64Array(0);
  return {
    kind,
    logPrior: Math.log(share / 2),
    levelDb: power.map((p) => 10 * Math.log10(p + 1e-10)),
    heardSum,
    means: levelsOf(meansOf(heardSum)),
    early: levelsOf(early),
    ratios: [ratio(10 * Math.log10(2)), ratio(6), ratio(10)],
  };
}

/**
 * Mean power through the windows of EARLY_SECONDS at the bands of seat-levels, for every third f0:
 * [f0 · SEAT_EARLY + window · SEAT_BANDS + band].
 */
function tabulateEarly(whole: HighPassResponse): Float64Array {
  const count = Math.floor((MODELS_PER_SHAPE - 1) / STEPS_PER_BAND) + 1;
  const table = new Float64Array(count * SEAT_EARLY);
  for (let i = 0; i < count; i++) {
    const f0 = LOWEST_BAND_HZ * 2 ** ((FIRST_F0_STEP + i * STEPS_PER_BAND) / STEPS_PER_OCTAVE);
    for (const [window, seconds] of EARLY_SECONDS.entries()) {
      const growth = 1 / (2 * Math.PI * seconds * f0);
      const power = Float64Array.from({ length: BAND_COUNT }, (_, k) =>
        squared(whole(rolloffBandHz(k) / f0, growth)),
      );
      table.set(seatMeans(power), i * SEAT_EARLY + window * SEAT_BANDS);
    }
  }
  return table;
}

function tabulate(power: (x: number) => number): Float64Array {
  return Float64Array.from({ length: HIGHEST_STEP - LOWEST_STEP + 1 }, (_, i) =>
    power(2 ** ((i + LOWEST_STEP) / STEPS_PER_OCTAVE)),
  );
}

function sumOverBands(power: Float64Array): Float64Array {
  const sum = power.slice();
  for (let i = STEPS_PER_BAND; i < sum.length; i++) {
    sum[i] = (sum[i] ?? 0) + (sum[i - STEPS_PER_BAND] ?? 0);
  }
  return sum;
}

/** Means over MEAN_STEPS and the band where they end; 0 where the table begins later. */
function meansOf(heardSum: Float64Array): Float64Array {
  const before = MEAN_STEPS + STEPS_PER_BAND;
  return heardSum.map((sum, i) =>
    i < before ? 0 : ((sum - (heardSum[i - before] ?? 0)) * STEPS_PER_BAND) / before,
  );
}

function levelsOf(power: Float64Array): PowerLevels {
  return { power, nepers: power.map(Math.log) };
}
