import * as v from 'valibot';
import { sheetRangeHz, type SpeakerModels } from '../system/speaker-models';
import { channelLabel, finite, groupId } from './schema-parts';

const [low, high] = sheetRangeHz;

/** What is declared of the speakers' models. */
export const speakerModels = v.object({
  sameAs: v.record(groupId, groupId),
  alike: v.record(groupId, v.boolean()),
  sheetF3Hz: v.record(channelLabel, v.pipe(finite, v.minValue(low), v.maxValue(high))),
}) satisfies v.GenericSchema<unknown, SpeakerModels>;
