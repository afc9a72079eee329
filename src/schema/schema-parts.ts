import * as v from 'valibot';
import { groupIds } from '../system/group-ids';

/** A number that is one: neither NaN nor infinite. */
export const finite = v.pipe(v.number(), v.finite());

/** A number above 0. */
export const positive = v.pipe(finite, v.gtValue(0));

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
