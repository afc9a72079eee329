import { findMainsLines } from './mains-lines';

/** Steady mains hum. */
export interface Hum {
  readonly mainsHz: 50 | 60;
  /** Rms of the lines that stand out, dB re full scale. */
  readonly levelDb: number;
  /** Frequencies of these lines, rising. */
  readonly lineHz: readonly number[];
}

/**
 * Mains hum in a noise floor of 0.8 s or more: lines at multiples of 50 or 60 Hz, up to the eighth,
 * two of them 12 dB or one of the first two 21 dB over the noise beside them, lasting. Null when
 * there is none. Throws RangeError for a rate that is not positive. Common practice.
 */
export function findHum(silence: Float64Array, sampleRate: number): Hum | null {
  if (!(sampleRate >= 8000 && sampleRate < Infinity)) {
    throw new RangeError(`sampleRate must be 8000 or more, got ${sampleRate}`);
  }
  const found = findMainsLines(silence, sampleRate);
  if (!found) return null;
  const { mainsHz, levelDb, foundHz, lines } = found;
  return { mainsHz, levelDb, lineHz: [...lines.keys()].map((multiple) => multiple * foundHz) };
}
