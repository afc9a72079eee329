import { msg, str } from '@lit/localize';
import type { Exposure } from '../../../src/soundlevel/sound-level';
import { durationText, isNumber, numberText, thinSpace } from '../../../src/locale/number-text';
import { limitDb } from '../../hearing-limit';

/** How much of a day's sound was taken so far; without a calibration, why that cannot be told. */
export function exposureSentence({ dose, equivalentDb, seconds }: Exposure): string {
  if (seconds <= 0) return msg('Nothing has sounded yet today.');
  if (!isNumber(dose) || !isNumber(equivalentDb)) {
    return msg(
      str`Sound for ${durationText(seconds)}. How loud cannot be told: the sound level is not calibrated.`,
    );
  }
  return msg(
    str`${numberText(dose * 100, dose < 0.1 ? 1 : 0)}${thinSpace}% of what ears should take in a day: ${numberText(
      equivalentDb,
      1,
    )}${thinSpace}dB(A) on average over ${durationText(seconds)}.`,
  );
}

/** Whether the person in the room should leave it or protect the ears now. */
export function isLoud({ dose, equivalentDb }: Exposure): boolean {
  return (isNumber(equivalentDb) && equivalentDb > limitDb) || (isNumber(dose) && dose >= 0.5);
}
