import type { ReadingCurves } from './reading';

/** What a response says about one frequency. */
export interface ThirdOctave {
  /** Mean power, dB. */
  readonly db: number;
  /** Over the noise, dB, at most 120. */
  readonly marginDb: number;
}

const halfThird = 2 ** (1 / 6);
const mostMarginDb = 120;

/** Mean power of a response in the third octave about a frequency; null where it has no point. */
export function thirdOctaveAt(
  { hz, db, noiseDb }: ReadingCurves['response'],
  middleHz: number,
): ThirdOctave | null {
  let [power, noise, count] = [0, 0, 0];
  for (const [k, at] of hz.entries()) {
    if (at < middleHz / halfThird || at > middleHz * halfThird) continue;
    power += 10 ** ((db[k] ?? -200) / 10);
    noise += 10 ** ((noiseDb[k] ?? -200) / 10);
    count++;
  }
  if (count === 0 || power === 0) return null;
  const marginDb = noise === 0 ? mostMarginDb : 10 * Math.log10(power / noise);
  return { db: 10 * Math.log10(power / count), marginDb: Math.min(mostMarginDb, marginDb) };
}
