import * as v from 'valibot';
import type { DeclaredSettings, SettingsInForce } from '../system/declared-settings';
import { filterKind } from '../system/sheet/sheet-schema';
import { channelLabel, decibels, frequency, groupId, length } from './schema-parts';

const declared = {
  distanceMetres: v.record(channelLabel, length),
  trimDb: v.record(channelLabel, decibels),
  crossoverHz: v.record(groupId, v.nullable(frequency)),
  equaliser: v.picklist(['on', 'off', 'not known']),
};

/** What is declared to be in force in the processor. */
export const declaredSettings = v.object(declared) satisfies v.GenericSchema<
  unknown,
  DeclaredSettings
>;

/** Families and orders of the filters of a crossover. */
export const filters = v.object({ highPass: filterKind, subLowPass: filterKind });

/** What was in force when a take was played. */
export const settingsInForce = v.object({
  ...declared,
  filters,
}) satisfies v.GenericSchema<unknown, SettingsInForce>;
