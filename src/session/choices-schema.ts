import * as v from 'valibot';
import { noChoices, type OwnChoices } from '../proposal/choices';
import type { TypedSettings } from '../proposal/settings-list';
import { finite, frequency, groupId } from '../schema/schema-parts';

const between = (low: number, high: number) => v.pipe(finite, v.minValue(low), v.maxValue(high));

const choices = v.object({
  fullRange: v.array(groupId),
  bassPreferenceDb: between(-20, 20),
  subLowPassHz: v.nullable(frequency),
  lowCutHz: v.nullable(v.union([frequency, v.literal('off')])),
  subsLaterSeconds: between(-0.1, 0.1),
  subsTurned: v.optional(v.boolean(), false),
  equaliserBands: v.pipe(between(0, 20), v.integer()),
}) satisfies v.GenericSchema<unknown, OwnChoices>;

const typed = v.record(v.string(), v.string()) satisfies v.GenericSchema<unknown, TypedSettings>;

/** Fields of the Propose stage; a session without them kept to the proposal and typed nothing. */
export const proposeFields = {
  choices: v.optional(choices, noChoices),
  typed: v.optional(typed, {}),
};
