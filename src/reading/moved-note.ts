import { numberText, withUnit } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import type { Readings } from './reading';

/** Third-octave midpoints that are compared, Hz; below, two takes differ by the noise alone. */
const bandsHz = Array.from({ length: 14 }, (_, k) => 200 * 2 ** (k / 3));
const largestDb = 1;

/**
 * Says that the microphone or the room has moved between two takes of one position: their
 * responses of the reference speaker differ by more than 1 dB rms over third-octaves from 200 to
 * 4000 Hz, levels aside. Null when they do not, or cannot be compared. Common practice.
 */
export function movedNote(base: Readings, other: Readings): string | null {
  const own = thirdOctaves(base, base.reference);
  const its = thirdOctaves(other, base.reference);
  if (!own || !its || base === other) return null;
  const differences = own.map((db, k) => db - (its[k] ?? 0));
  const mean = differences.reduce((sum, one) => sum + one, 0) / differences.length;
  const power = differences.reduce((sum, one) => sum + (one - mean) ** 2, 0) / differences.length;
  if (!(Math.sqrt(power) > largestDb)) return null;
  return msg(
    str`The microphone or the room has moved between takes of this position: ${base.reference} differs by ${withUnit(numberText(Math.sqrt(power), 1), 'dB')} from 200 to 4000 Hz. Repeat the whole position.`,
  );
}

/** Mean levels of the reference's response per third-octave, dB; null without a whole response. */
function thirdOctaves(readings: Readings, reference: string): number[] | null {
  const reading = readings.channels.find(({ channel }) => channel === reference);
  if (!reading?.curves || reading.faults.length > 0) return null;
  const { hz, db } = reading.curves.response;
  const bands = bandsHz.map((middle) => {
    const inside = hz.flatMap((f, k) =>
      Math.abs(Math.log2(f / middle)) <= 1 / 6 ? [10 ** ((db[k] ?? 0) / 10)] : [],
    );
    return 10 * Math.log10(inside.reduce((sum, one) => sum + one, 0) / inside.length);
  });
  return bands.every((level) => Number.isFinite(level)) ? bands : null;
}
