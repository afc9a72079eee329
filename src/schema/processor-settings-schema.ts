import * as v from 'valibot';
import type { ProcessorSettings } from '../system/processor-settings';
import { channelLabel, decibels, frequency, groupId, length } from './schema-parts';
import { filters } from './settings-schema';

/** What was typed into a processor when a take was to prove it. */
export const processorSettings = v.object({
  distanceMetres: v.record(channelLabel, length),
  trimDb: v.record(channelLabel, decibels),
  inverted: v.array(channelLabel),
  crossoverHz: v.record(groupId, v.nullable(frequency)),
  subLowPassHz: v.nullable(frequency),
  lowCutHz: v.nullable(frequency),
  lfe: v.object({ lowPassHz: frequency, gainDb: decibels }),
  filters,
  equalised: v.boolean(),
}) satisfies v.GenericSchema<unknown, ProcessorSettings>;
