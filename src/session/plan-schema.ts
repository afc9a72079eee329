import * as v from 'valibot';
import {
  channelLabel,
  decibels,
  finite,
  length,
  positiveLength,
  seconds,
} from '../schema/schema-parts';
import { speakerModels } from '../schema/models-schema';
import { declaredSettings } from '../schema/settings-schema';
import { nothingInForce } from '../system/declared-settings';
import { nothingDeclared, type DeclaredSystem } from '../system/declared-system';
import { noModelsDeclared } from '../system/speaker-models';
import { sheetSchema } from '../system/sheet/sheet-schema';
import type { EarAnswers } from '../wirecheck/ear-check';
import type { WalkSound, WalkStop } from '../wirecheck/walk';

const place = v.object({
  azimuthDegrees: v.pipe(finite, v.minValue(-180), v.maxValue(180)),
  elevationDegrees: v.pipe(finite, v.minValue(-90), v.maxValue(90)),
  distanceMetres: v.nullable(positiveLength),
});

const system = v.object({
  places: v.record(channelLabel, place),
  bounced: v.array(channelLabel),
  room: v.nullable(
    v.object({
      lengthMetres: positiveLength,
      widthMetres: positiveLength,
      heightMetres: positiveLength,
      seatFromFrontMetres: positiveLength,
      seatFromLeftMetres: positiveLength,
      earHeightMetres: positiveLength,
    }),
  ),
  seats: v.array(v.object({ name: v.string(), rightMetres: length, backMetres: length })),
}) satisfies v.GenericSchema<unknown, DeclaredSystem>;

const earAnswers = v.record(
  channelLabel,
  v.variant('kind', [
    v.object({ kind: v.literal('here') }),
    v.object({ kind: v.literal('elsewhere'), speaker: channelLabel }),
    v.object({ kind: v.literal('silent') }),
  ]),
) satisfies v.GenericSchema<unknown, EarAnswers>;

const walkSound = v.object({
  channel: channelLabel,
  levelDb: v.nullable(decibels),
  lowDb: v.optional(v.nullable(decibels), null),
  arrivalSeconds: v.nullable(seconds),
  polarity: v.picklist(['normal', 'inverted', 'cannot tell']),
}) satisfies v.GenericSchema<unknown, WalkSound>;

const walkStop = v.object({
  speaker: channelLabel,
  sounds: v.array(walkSound),
}) satisfies v.GenericSchema<unknown, WalkStop>;

/** Fields of the Plan and Patch stages; a session without them declared nothing. */
export const planFields = {
  system: v.optional(system, nothingDeclared),
  sheet: v.optional(v.nullable(sheetSchema), null),
  earAnswers: v.optional(earAnswers, {}),
  walk: v.optional(v.array(walkStop), []),
  seatSounds: v.optional(v.array(walkSound), []),
  inForce: v.optional(declaredSettings, nothingInForce),
  models: v.optional(speakerModels, noModelsDeclared),
};
