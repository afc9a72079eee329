import { moveLevel } from './move-level';
import { moveBass } from './read-bass';
import type { Readings } from './reading';

/** What was made last of readings. */
const known = new WeakMap<Readings, { readonly gainDb: number; readonly moved: Readings }>();

/**
 * Readings as they would be had the test signal been `gainDb` louder: levels and complex bass are
 * moved, everything that is relative stays. Readings of the same gain are given back as they are, and
 * the very same ones for the gain asked last.
 * Throws RangeError for a gain that is not a finite number.
 */
export function withGain(readings: Readings, gainDb: number): Readings {
  if (!Number.isFinite(gainDb)) throw new RangeError(`gainDb must be finite, got ${gainDb}`);
  if (gainDb === 0) return readings;
  const before = known.get(readings);
  if (before?.gainDb === gainDb) return before.moved;
  const moved = {
    ...readings,
    channels: readings.channels.map((channel) => ({
      ...channel,
      ...moveLevel(channel, gainDb),
      ...(channel.bass ? { bass: moveBass(channel.bass, gainDb, 0) } : {}),
    })),
  };
  known.set(readings, { gainDb, moved });
  return moved;
}
