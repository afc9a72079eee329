import * as v from 'valibot';
import type { ProcessorSettings } from '../system/processor-settings';
import { channelLabel, finite, groupId, positive } from './schema-parts';
import { filters } from './settings-schema';

/** What was typed into a processor when a take was to prove it. */
export const processorSettings = v.object({
  distanceMetres: v.record(channelLabel, finite),
  trimDb: v.record(channelLabel, finite),
  inverted: v.array(channelLabel),
  crossoverHz: v.record(groupId, v.nullable(positive)),
  subLowPassHz: v.nullable(positive),
  lowCutHz: v.nullable(positive),
  lfe: v.object({ lowPassHz: positive, gainDb: finite }),
  filters,
  equalised: v.boolean(),
}) satisfies v.GenericSchema<unknown, ProcessorSettings>;
