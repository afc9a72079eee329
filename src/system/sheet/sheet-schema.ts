import { msg, str } from '@lit/localize';
import * as v from 'valibot';
import {
  channelLabel,
  crossover,
  decibels,
  finite,
  frequency,
  groupId,
  length,
  levelStep,
  positiveLength,
} from '../../schema/schema-parts';
import type { ProcessorSheet } from './processor-sheet';

/** A file that names more is no processor, or is meant to choke the reader. */
const mostEntries = 64;

const few = <Item>(item: v.GenericSchema<unknown, Item>) =>
  v.pipe(
    v.array(item),
    v.check(
      (list) => list.length <= mostEntries,
      ({ input }) => msg(str`at most ${mostEntries} entries long, not ${input.length}`),
    ),
  );

const some = <Item>(item: v.GenericSchema<unknown, Item>) =>
  v.pipe(
    few(item),
    v.check((list) => list.length > 0, 'at least one entry long'),
  );

/** Control characters could steer a terminal; marks of emphasis and tags are plain text. */
const plainName = v.pipe(
  v.string(),
  v.check(
    (text) => text.trim() === text && text.length >= 1 && text.length <= 60,
    'a text of 1 to 60 characters without blanks at its ends',
  ),
  v.check((text) => !/\p{C}/u.test(text), 'a text without control characters'),
);

const heightPairs = v.optional(some(v.picklist(['front', 'middle', 'back'])));

/** Family and order of a filter. */
export const filterKind = v.pipe(
  v.strictObject({
    family: v.picklist(['Butterworth', 'Linkwitz-Riley']),
    order: v.pipe(finite, v.integer(), v.minValue(1), v.maxValue(8)),
  }),
  v.check(
    ({ family, order }) => family === 'Butterworth' || order % 2 === 0,
    'a filter of even order where it is Linkwitz-Riley',
  ),
);

/** Shape of a processor sheet, version 1; an unknown field is refused, since it may be a rule. */
export const sheetSchema = v.strictObject({
  format: v.literal('leadline-processor'),
  version: v.literal(1),
  name: plainName,
  invented: v.boolean(),
  outputs: some(
    v.strictObject({
      id: plainName,
      name: plainName,
      roles: some(
        v.strictObject({ channel: channelLabel, onlyWithout: v.optional(some(channelLabel)) }),
      ),
    }),
  ),
  pairs: few(v.strictTuple([plainName, plainName])),
  exclusive: few(
    v.strictObject({
      name: plainName,
      choices: some(
        v.strictObject({ channels: some(channelLabel), outputs: v.optional(some(plainName)) }),
      ),
    }),
  ),
  filling: v.strictObject({
    channels: few(few(some(channelLabel))),
    outputs: few(few(some(plainName))),
  }),
  heightNaming: v.strictObject({ '1': heightPairs, '2': heightPairs, '3': heightPairs }),
  crossover: v.strictObject({
    stepsHz: some(crossover),
    setting: v.picklist(['one for all', 'per group']),
    limits: few(v.strictObject({ groups: some(groupId), lowHz: frequency, highHz: frequency })),
  }),
  fullRange: few(v.strictObject({ group: groupId, unlocks: few(groupId) })),
  subLowPass: v.strictObject({
    stepsHz: some(frequency),
    notBelowHighestBedCrossover: v.boolean(),
  }),
  lowCut: v.strictObject({ stepsHz: few(frequency) }),
  distance: v.strictObject({
    unit: v.picklist(['m', 'ft']),
    step: positiveLength,
    low: v.pipe(length, v.minValue(0)),
    high: positiveLength,
  }),
  level: v.strictObject({ stepDb: levelStep, lowDb: decibels, highDb: decibels }),
  filters: v.strictObject({ highPass: filterKind, subLowPass: filterKind }),
}) satisfies v.GenericSchema<unknown, ProcessorSheet>;
