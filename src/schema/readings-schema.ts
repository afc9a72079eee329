import * as v from 'valibot';
import { BAND_COUNT } from '../../dsp/rolloff/rolloff-bands';
import { bassGrid } from '../../dsp/bass/transfer';
import type { Readings } from '../reading/reading';
import {
  channelLabel,
  decibels,
  finite,
  frequency,
  length,
  positive,
  positiveLength,
  seconds,
  temperature,
} from './schema-parts';
import { settingsInForce } from './settings-schema';

function intervalOf(each: v.GenericSchema<number>) {
  return v.pipe(
    v.tuple([each, each]),
    v.check(([low, high]) => low <= high, 'an interval from the lower to the higher value'),
  );
}
/** An estimated frequency, Hz. */
const estimated = v.pipe(finite, v.minValue(0), v.maxValue(1_000_000));
const estimate = v.object({ median: estimated, interval: intervalOf(estimated) });
const probability = v.pipe(finite, v.minValue(0), v.maxValue(1));
const numbers = v.array(finite);

const margins = v.pipe(
  v.object({ hz: numbers, marginDb: numbers }),
  v.check(({ hz, marginDb }) => hz.length === marginDb.length, 'columns of one length'),
);
const noiseFloor = v.pipe(
  v.object({ hz: numbers, db: numbers }),
  v.check(({ hz, db }) => hz.length === db.length, 'columns of one length'),
);

export const rolloff = v.object({
  f3Hz: estimate,
  f6Hz: estimate,
  f10Hz: estimate,
  f6UpperHz: frequency,
  box: v.object({ kind: v.picklist(['closed', 'vented', 'cannot tell']), probability }),
});

/** One number a band. */
const bands = v.pipe(numbers, v.length(BAND_COUNT));
const bassBands = v.object({
  power: bands,
  noisePower: bands,
  lines: bands,
  early: v.array(v.object({ seconds: positive, power: bands, noisePower: bands })),
});

const curves = v.object({
  response: v.object({ hz: numbers, db: numbers, noiseDb: numbers }),
  fit: v.nullable(v.object({ hz: numbers, db: numbers, low: numbers, high: numbers })),
  envelope: v.object({ startSeconds: seconds, stepSeconds: positive, level: numbers }),
});

const bassCount = bassGrid().length;
const bass = v.pipe(
  v.object({ re: numbers, im: numbers }),
  v.check(
    ({ re, im }) => re.length === bassCount && im.length === bassCount,
    `two columns of ${bassCount} numbers`,
  ),
);

const levels = v.array(v.nullable(finite));
const limits = v.array(v.nullable(v.picklist(['noise', 'decay', 'band'])));
const harmonicCurve = { db: levels, floorDb: levels, limitedBy: limits };

const distortion = v.variant('kind', [
  v.object({
    kind: v.literal('curves'),
    hz: v.array(positive),
    fundamentalDb: numbers,
    fundamentalNoiseDb: numbers,
    harmonics: v.array(v.object({ order: positive, ...harmonicCurve })),
    total: v.object(harmonicCurve),
    apartFromHz: v.nullable(positive),
  }),
  v.object({ kind: v.literal('cannot tell'), sentence: v.string() }),
]);

const channel = v.object({
  channel: channelLabel,
  arrivalSeconds: v.nullable(seconds),
  arrivalInterval: v.nullable(intervalOf(seconds)),
  distanceMetres: v.nullable(length),
  distanceInterval: v.nullable(intervalOf(length)),
  ceilingPathMetres: v.nullable(length),
  levelDb: v.nullable(decibels),
  levelInterval: v.optional(v.nullable(intervalOf(decibels))),
  polarity: v.picklist(['normal', 'inverted', 'cannot tell']),
  rolloff: v.nullable(rolloff),
  bassBands: v.optional(bassBands),
  bassMarginDb: v.nullable(decibels),
  peakToNoiseDb: v.nullable(decibels),
  decaySeconds: v.optional(v.nullable(seconds), null),
  bass: v.optional(v.nullable(bass)),
  distortion: v.optional(distortion),
  faults: v.array(
    v.object({
      kind: v.picklist([
        'lost',
        'repeated',
        'clipped',
        'silent',
        'gain',
        'bang',
        'rumble',
        'hum',
        'voice',
        'noisy',
      ]),
      sentence: v.string(),
    }),
  ),
  margins: v.optional(v.nullable(margins)),
  notes: v.array(v.string()),
  curves: v.optional(v.nullable(curves), null),
});

const clockFault = v.object({
  kind: v.picklist(['lost', 'repeated']),
  samples: finite,
  channel: v.nullable(channelLabel),
});

const joinedTake = v.object({ takeId: v.string(), channels: v.array(channelLabel) });

/**
 * Shape of what `leadline read` prints, version 1. Curves may be left away; what has a default was
 * not always there.
 */
export const readingsSchema = v.object({
  format: v.literal('leadline-readings'),
  version: v.literal(1),
  layout: v.string(),
  takeId: v.string(),
  reference: channelLabel,
  referenceDistanceMetres: positiveLength,
  absolute: v.optional(v.boolean(), false),
  temperatureCelsius: temperature,
  simulated: v.boolean(),
  clock: v.object({
    skewPpm: finite,
    skewInterval: intervalOf(finite),
    faults: v.array(clockFault),
  }),
  capture: v.object({
    clipped: v.array(channelLabel),
    noiseFloorDb: decibels,
    noise: v.optional(v.nullable(noiseFloor)),
    peakDb: decibels,
  }),
  channels: v.pipe(v.array(channel), v.minLength(1)),
  notes: v.optional(v.array(v.string()), () => []),
  joined: v.optional(v.array(joinedTake), () => []),
  inForce: v.optional(settingsInForce),
}) satisfies v.GenericSchema<unknown, Readings>;
