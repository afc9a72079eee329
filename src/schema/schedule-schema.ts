import * as v from 'valibot';
import type { Schedule } from '../take/schedule';
import { channelLabel, finite, positive, sampleCount } from './schema-parts';

const atMost0 = v.pipe(finite, v.minValue(-200), v.maxValue(0));
const atLeastOne = v.pipe(sampleCount, v.minValue(1));

const segment = v.object({
  channel: channelLabel,
  markStart: sampleCount,
  sweepStart: sampleCount,
  sweep: v.object({
    startHz: positive,
    endHz: positive,
    lengthSamples: atLeastOne,
    fadeInSamples: sampleCount,
    fadeOutSamples: sampleCount,
  }),
  end: sampleCount,
  /** Absent in version 1. */
  replayGainDb: v.optional(v.pipe(finite, v.minValue(-30), v.maxValue(30)), 0),
});

/** Shape of take.json, versions 1 and 2, given as 2; fields of other programs' making are left away. */
export const scheduleSchema = v.object({
  format: v.literal('leadline-take'),
  version: v.pipe(
    v.picklist([1, 2]),
    v.transform(() => 2 as const),
  ),
  id: v.string(),
  layout: v.string(),
  sampleRate: v.pipe(finite, v.integer(), v.minValue(44100), v.maxValue(192000)),
  lengthSamples: atLeastOne,
  channels: v.pipe(v.array(channelLabel), v.minLength(1)),
  reference: channelLabel,
  silence: v.object({ start: sampleCount, length: sampleCount }),
  wake: v.object({ start: sampleCount, length: sampleCount, levelDb: atMost0 }),
  mark: v.object({
    startHz: positive,
    endHz: positive,
    lengthSamples: atLeastOne,
    fadeSamples: sampleCount,
  }),
  markStarts: v.array(sampleCount),
  peakDb: atMost0,
  segments: v.array(segment),
}) satisfies v.GenericSchema<unknown, Schedule>;
