import * as v from 'valibot';
import type { DeclaredSettings, SettingsInForce } from '../system/declared-settings';
import { filterKind } from '../system/sheet/sheet-schema';
import { channelLabel, finite, groupId, positive } from './schema-parts';

const declared = {
  distanceMetres: v.record(channelLabel, finite),
  trimDb: v.record(channelLabel, finite),
  crossoverHz: v.record(groupId, v.nullable(positive)),
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
