import { LocaleMap } from '../locale/locale-map';
import { joinReadings } from './join-readings';
import type { Readings } from './reading';

interface Joined {
  readonly takes: readonly Readings[];
  readonly readings: Readings;
}

/** What was joined last, by its newest take. */
const known = new LocaleMap<Readings, Joined>();

/**
 * As joinReadings, but the very same readings for the very same takes: what was worked out from them
 * is known to stand. Throws RangeError as it does.
 */
export function joinOnce(takes: readonly Readings[]): Readings {
  const newest = takes.at(-1);
  const before = newest && known.get(newest);
  if (before && isSame(before.takes, takes)) return before.readings;
  const readings = joinReadings(takes);
  if (newest) known.set(newest, { takes, readings });
  return readings;
}

function isSame(a: readonly Readings[], b: readonly Readings[]): boolean {
  return a.length === b.length && a.every((take, n) => take === b[n]);
}
