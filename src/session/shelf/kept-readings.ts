import type { Readings } from '../../reading/reading';

/** Stands in a stored take for its readings, which lie beside the documents. */
export interface KeptAt {
  readonly kept: string;
}

/** Readings do not change, while their session is stored again with every change of it. */
const keys = new WeakMap<Readings, string>();

/** The key that readings are kept at, now or once they are stored. */
export function keyOfReadings(readings: Readings): string {
  const known = keys.get(readings);
  if (known !== undefined) return known;
  const key = crypto.randomUUID();
  keys.set(readings, key);
  return key;
}

/** Notes where readings were found, so that they are not stored a second time. */
export function foundReadings(readings: Readings, key: string): void {
  keys.set(readings, key);
}

/** The key in a stored take; null where its readings do not lie beside it. */
export function keyInTake(take: unknown): string | null {
  if (typeof take !== 'object' || take === null || !('readings' in take)) return null;
  const { readings } = take;
  if (typeof readings !== 'object' || readings === null || !('kept' in readings)) return null;
  return typeof readings.kept === 'string' ? readings.kept : null;
}

/** Takes of a stored session of any version; none where it is damaged. */
export function takesIn(stored: unknown): readonly unknown[] {
  if (typeof stored !== 'object' || stored === null || !('takes' in stored)) return [];
  return Array.isArray(stored.takes) ? stored.takes : [];
}
