import * as v from 'valibot';
import { readingsSchema } from '../schema/readings-schema';
import { scheduleSchema } from '../schema/schedule-schema';
import {
  channelLabel,
  crossover,
  decibels,
  finite,
  groupId,
  length,
  levelStep,
  positiveLength,
  temperature,
} from '../schema/schema-parts';
import { settingsInForce } from '../schema/settings-schema';
import { processorSettings } from '../schema/processor-settings-schema';
import { layoutFromName } from '../system/layout';
import { diameterMetres, fitsItsBox } from '../reading/close-to';
import { isTrouble } from '../trouble';
import type { SessionDocument, TakeRecord } from './document';
import { planFields } from './plan-schema';
import { proposeFields } from './choices-schema';
import { microphoneSchema } from './microphone-schema';
import { noiseReadingSchema } from './noise-reading-schema';
import { mostNotes } from './notes';
import { practiceSlip } from './practice-slip-schema';

const rigKind = v.picklist(['practice', 'recording', 'live']);
const diameter = v.pipe(finite, v.minValue(diameterMetres.low), v.maxValue(diameterMetres.high));
const portSize = v.pipe(
  v.object({ coneMetres: diameter, portMetres: diameter }),
  v.check(fitsItsBox, 'a port wider than its box'),
);
const position = v.object({
  id: v.pipe(v.string(), v.nonEmpty()),
  name: v.string(),
  kind: v.picklist(['seat', 'close']),
  close: v.optional(
    v.object({
      channel: channelLabel,
      coneOnly: v.boolean(),
      port: v.optional(portSize),
    }),
  ),
});
const device = v.object({ id: v.string(), name: v.string() });
const output = v.pipe(finite, v.integer(), v.minValue(0), v.maxValue(255));
const atMost0 = v.pipe(decibels, v.maxValue(0));

function between(low: number, high: number) {
  return v.pipe(finite, v.minValue(low), v.maxValue(high));
}

const takeSchema = v.object({
  id: v.string(),
  position,
  startedAt: v.string(),
  rig: rigKind,
  simulated: v.boolean(),
  schedule: scheduleSchema,
  captureId: v.string(),
  loopbackId: v.nullable(v.string()),
  captureRate: between(1000, 1_000_000),
  notes: v.array(v.string()),
  readings: v.nullable(readingsSchema),
  inForce: v.optional(settingsInForce),
  gainDb: v.optional(atMost0),
  outdated: v.optional(v.boolean()),
  saidIn: v.optional(v.string()),
  purpose: v.optional(v.picklist(['probe', 'prove'])),
  proves: v.optional(v.object({ id: v.string(), settings: processorSettings })),
}) satisfies v.GenericSchema<unknown, TakeRecord>;

/** A name: far longer than any field takes, copies of copies included. */
const name = v.pipe(v.string(), v.maxLength(1000));

const takes = v.pipe(
  v.array(takeSchema),
  v.check((all) => new Set(all.map(({ id }) => id)).size === all.length, 'no take twice'),
);

const meaningfulLayout = v.pipe(
  v.string(),
  v.check((name) => !isTrouble(layoutFromName(name)), 'a layout name that means nothing'),
);

/** A session as it is stored, version 2; everything read back is held against it. */
export const sessionSchema = v.object({
  format: v.literal('leadline-session'),
  version: v.literal(2),
  id: v.pipe(v.string(), v.nonEmpty()),
  name,
  createdAt: v.string(),
  layout: meaningfulLayout,
  conditions: v.object({
    temperatureCelsius: temperature,
    referenceDistanceMetres: positiveLength,
  }),
  rig: rigKind,
  practice: v.object({
    seed: finite,
    hidden: v.optional(v.nullable(finite), null),
    slips: v.optional(v.array(practiceSlip), () => []),
    gainDb: v.optional(atMost0, 0),
  }),
  live: v.object({
    output: v.nullable(device),
    microphone: v.nullable(device),
    gainDb: atMost0,
    capDb: atMost0,
    routes: v.record(channelLabel, output),
    lfeOutput: v.nullable(output),
    microphoneInput: v.nullable(v.picklist([0, 1])),
    loopback: v.boolean(),
  }),
  microphone: microphoneSchema,
  take: v.object({
    sweepSeconds: between(0.5, 30),
    averages: v.pipe(between(1, 8), v.integer()),
    pauseSeconds: between(0, 10),
    overlap: v.boolean(),
    repeats: v.pipe(between(0, 3), v.integer()),
  }),
  position,
  processor: v.object({
    crossoverHz: v.array(crossover),
    distanceStepMetres: positiveLength,
    distanceRangeMetres: v.tuple([length, length]),
    levelStepDb: levelStep,
    levelRangeDb: v.tuple([decibels, decibels]),
    distanceUnit: v.optional(v.picklist(['m', 'ft'])),
  }),
  chosenCrossoverHz: v.record(groupId, crossover),
  takes,
  noiseReadings: v.array(noiseReadingSchema),
  notes: v.optional(v.pipe(v.string(), v.maxLength(mostNotes)), ''),
  ...planFields,
  ...proposeFields,
}) satisfies v.GenericSchema<unknown, SessionDocument>;
