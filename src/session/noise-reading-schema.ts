import * as v from 'valibot';
import type { NoiseReading } from '../noise/noise-state';
import { rolloff } from '../schema/readings-schema';
import { channelLabel, decibels, finite, frequency, seconds } from '../schema/schema-parts';

const numbers = v.array(finite);

/** A noise or listening reading of a stored session. */
export const noiseReadingSchema = v.object({
  id: v.string(),
  positionId: v.string(),
  kind: v.picklist(['noise', 'listening']),
  channel: channelLabel,
  startedAt: v.string(),
  rig: v.picklist(['practice', 'recording', 'live']),
  simulated: v.boolean(),
  lowHz: frequency,
  highHz: frequency,
  seconds,
  levelDb: v.nullable(decibels),
  response: v.nullable(v.object({ hz: numbers, db: numbers, noiseDb: numbers })),
  rolloff: v.nullable(rolloff),
  notes: v.array(v.string()),
}) satisfies v.GenericSchema<unknown, NoiseReading>;
