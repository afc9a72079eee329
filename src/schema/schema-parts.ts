import * as v from 'valibot';
import { crossoverRangeHz } from '../system/crossover-range';
import { groupIds } from '../system/group-ids';

/** A number that is one: neither NaN nor infinite, nor so large that sums and squares of it are. */
export const finite = v.pipe(v.number(), v.finite(), v.minValue(-1e12), v.maxValue(1e12));

/** A number above 0. */
export const positive = v.pipe(finite, v.gtValue(0));

/** A length, or a distance of either sign, m or ft: no more than sound goes in half a minute. */
export const length = v.pipe(finite, v.minValue(-10_000), v.maxValue(10_000));

/** A length above 0. */
export const positiveLength = v.pipe(positive, v.maxValue(10_000));

/** A frequency above 0, Hz, up to the highest rate a recording may have. */
export const frequency = v.pipe(positive, v.maxValue(1_000_000));

/** A crossover, Hz. */
export const crossover = v.pipe(
  finite,
  v.minValue(crossoverRangeHz[0]),
  v.maxValue(crossoverRangeHz[1]),
);

/** A level or a gain, dB: down to the smallest power a 64-bit number holds. */
export const decibels = v.pipe(finite, v.minValue(-7000), v.maxValue(1000));

/** A step of levels, dB. */
export const levelStep = v.pipe(positive, v.maxValue(100));

/** A time of either sign, s, up to an hour. */
export const seconds = v.pipe(finite, v.minValue(-3600), v.maxValue(3600));

/** A temperature of a room, °C. */
export const temperature = v.pipe(finite, v.minValue(-40), v.maxValue(60));

/** A whole position or count of samples, up to an hour at 192 kHz. */
export const sampleCount = v.pipe(finite, v.integer(), v.minValue(0), v.maxValue(192000 * 3600));

/** The labels a channel may carry. */
export const channelLabel = v.picklist([
  'FL',
  'FR',
  'FC',
  'SiL',
  'SiR',
  'BL',
  'BR',
  'FLw',
  'FRw',
  'TpFL',
  'TpFR',
  'TpSiL',
  'TpSiR',
  'TpBL',
  'TpBR',
  'Sub 1',
  'Sub 2',
  'Sub 3',
  'Sub 4',
]);

/** The groups of speakers that share a crossover. */
export const groupId = v.picklist(groupIds);
