import type { Readings } from '../../reading/reading';
import type { StoreDatabase } from '../store-database';

/**
 * Texts of the readings that are not stored yet, by key. `pause` is waited for after each: writing
 * all of them at once would hold up the screen.
 */
export async function writeTexts(
  database: StoreDatabase,
  readings: ReadonlyMap<string, Readings>,
  pause: () => Promise<void>,
): Promise<ReadonlyMap<string, string>> {
  const texts = new Map<string, string>();
  for (const [key, one] of readings) {
    if ((await database.getKey('readings', key)) !== undefined) continue;
    texts.set(key, JSON.stringify(one));
    await pause();
  }
  return texts;
}
