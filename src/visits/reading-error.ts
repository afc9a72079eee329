import { levelHalfDb } from '../reading/move-level';
import type { ChannelReading } from '../reading/reading';
import { isSub } from '../system/channel-names';

/** Two readings at one place agree within this, dB. */
const repeatDb = 0.1;
/** Where nothing is known of the noise. */
const unknownHalfDb = 0.5;
const two90 = 1.645;
/** Independent lines of the bands of levels without an interval: the fewer, the more noise counts. */
const lines = { main: 30, sub: 10 } as const;

/**
 * Half width, dB, of the 90 % interval of a mean power so far above steady noise: the noise adds
 * with a phase of its own, so that each of `count` independent lines differs by sd √(2 N/S) of its
 * power (first order).
 */
export function noiseHalfDb(marginDb: number, count: number): number {
  const sd = Math.sqrt((2 * 10 ** (-marginDb / 10)) / count);
  return Math.min(20, (10 / Math.LN10) * two90 * sd);
}

/**
 * Half width, dB, of the 90 % interval of a channel's level taken again at one place: its own, or
 * where an older session has none, by its margin over the noise.
 */
export function repeatedLevelHalfDb(reading: ChannelReading): number {
  const own = levelHalfDb(reading);
  if (own !== null) return Math.hypot(repeatDb, own);
  const sub = isSub(reading.channel);
  const margin = levelMarginDb(reading, sub);
  if (margin === null) return Math.hypot(repeatDb, unknownHalfDb);
  return Math.hypot(repeatDb, noiseHalfDb(margin, sub ? lines.sub : lines.main));
}

/** Least margin over the noise in the octaves that give a level, dB; null when none is known. */
function levelMarginDb(reading: ChannelReading, sub: boolean): number | null {
  const [low, high] = sub ? [25, 90] : [400, 2500];
  const { margins, curves, bassMarginDb } = reading;
  const inOctaves = margins?.hz.flatMap((hz, k) =>
    hz >= low && hz <= high ? (margins.marginDb[k] ?? []) : [],
  );
  if (inOctaves && inOctaves.length > 0) return Math.min(...inOctaves);
  const response = curves?.response;
  const overNoise = response?.hz.flatMap((hz, k) => {
    const [db, noise] = [response.db[k], response.noiseDb[k]];
    return hz >= low && hz <= high && db !== undefined && noise !== undefined ? [db - noise] : [];
  });
  if (overNoise && overNoise.length > 0) {
    return overNoise.reduce((sum, one) => sum + one, 0) / overNoise.length;
  }
  return sub ? bassMarginDb : null;
}
