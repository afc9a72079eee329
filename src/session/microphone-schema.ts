import * as v from 'valibot';
import type { MicrophoneSetup } from '../microphone/calibration';
import { decibels, finite, frequency } from '../schema/schema-parts';

const calibration = v.pipe(
  v.object({
    name: v.string(),
    hz: v.array(frequency),
    db: v.array(decibels),
    phaseDegrees: v.nullable(v.array(finite)),
  }),
  v.check(
    ({ hz, db, phaseDegrees }) =>
      hz.every((value, index) => index === 0 || value > (hz[index - 1] ?? 0)) &&
      db.length === hz.length &&
      (phaseDegrees === null || phaseDegrees.length === hz.length),
    'columns of one length with rising frequencies',
  ),
);

/** The microphone of a stored session. */
export const microphoneSchema = v.object({
  calibration: v.nullable(calibration),
  orientation: v.picklist(['up', 'at the speakers', 'not noted']),
  soundLevel: v.nullable(
    v.object({
      offsetDb: decibels,
      how: v.picklist(['calibrator', 'sound level meter']),
      at: v.string(),
      microphone: v.string(),
    }),
  ),
}) satisfies v.GenericSchema<unknown, MicrophoneSetup>;
