import * as v from 'valibot';
import { readingsSchema } from '../schema/readings-schema';
import { scheduleSchema } from '../schema/schedule-schema';
import { finite, groupId, positive } from '../schema/schema-parts';
import { layoutFromName } from '../system/layout';
import { isTrouble } from '../trouble';
import type { SessionDocument, TakeRecord } from './document';

const rigKind = v.picklist(['practice', 'recording', 'live']);

const takeSchema = v.object({
  id: v.string(),
  position: v.object({ name: v.string(), kind: v.picklist(['seat', 'close']) }),
  startedAt: v.string(),
  rig: rigKind,
  simulated: v.boolean(),
  schedule: scheduleSchema,
  captureId: v.string(),
  captureRate: positive,
  notes: v.array(v.string()),
  readings: v.nullable(readingsSchema),
}) satisfies v.GenericSchema<unknown, TakeRecord>;

const meaningfulLayout = v.pipe(
  v.string(),
  v.check((name) => !isTrouble(layoutFromName(name)), 'a layout name that means nothing'),
);

/** A session as it is stored, version 1; everything read back is held against it. */
export const sessionSchema = v.object({
  format: v.literal('leadline-session'),
  version: v.literal(1),
  id: v.pipe(v.string(), v.nonEmpty()),
  name: v.string(),
  createdAt: v.string(),
  layout: meaningfulLayout,
  conditions: v.object({ temperatureCelsius: finite, referenceDistanceMetres: positive }),
  rig: rigKind,
  practice: v.object({ seed: finite }),
  live: v.object({
    outputId: v.nullable(v.string()),
    microphoneId: v.nullable(v.string()),
    gainDb: v.pipe(finite, v.maxValue(0)),
  }),
  processor: v.object({
    crossoverHz: v.array(positive),
    distanceStepMetres: positive,
    distanceRangeMetres: v.tuple([finite, finite]),
    levelStepDb: positive,
    levelRangeDb: v.tuple([finite, finite]),
  }),
  chosenCrossoverHz: v.record(groupId, positive),
  takes: v.array(takeSchema),
}) satisfies v.GenericSchema<unknown, SessionDocument>;
