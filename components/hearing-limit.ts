import { msg, str } from '@lit/localize';
import { thinSpace } from '../src/locale/number-text';

/** The level above which ears tire within a working day, dB(A); NIOSH 98-126. */
export const limitDb = 85;

/** How much sound a day holds, and what to do above it; the same words wherever it is said. */
export function hearingLimit(): string {
  return msg(
    str`A day holds ${limitDb}${thinSpace}dB(A) for 8 hours, and half that time for every 3 dB more (NIOSH 98-126). Above it, leave the room or wear hearing protection.`,
  );
}
