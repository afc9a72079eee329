import { moveBass } from './read-bass';
import type { Readings } from './reading';

/**
 * Readings as they would be had the test signal been `gainDb` louder: levels and complex bass are
 * moved, everything that is relative stays. Readings of the same gain are given back as they are.
 * Throws RangeError for a gain that is not a finite number.
 */
export function withGain(readings: Readings, gainDb: number): Readings {
  if (!Number.isFinite(gainDb)) throw new RangeError(`gainDb must be finite, got ${gainDb}`);
  if (gainDb === 0) return readings;
  return {
    ...readings,
    channels: readings.channels.map((channel) => ({
      ...channel,
      levelDb: channel.levelDb === null ? null : channel.levelDb + gainDb,
      ...(channel.bass ? { bass: moveBass(channel.bass, gainDb, 0) } : {}),
    })),
  };
}
