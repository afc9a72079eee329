import type { StoreDatabase } from '../store-database';
import { keyInTake, takesIn } from './kept-readings';
import { parseStored, withTexts } from './stored-form';
import type { ParsedSession } from './parse-session';

/** A stored session as it was found. */
export interface FoundStored {
  /** Whole: with the texts of its readings in it. */
  readonly whole: unknown;
  readonly parsed: ParsedSession;
}

/** The stored session of an id with its readings, as they belong together; null for none. */
export async function findStored(database: StoreDatabase, id: string): Promise<FoundStored | null> {
  const tables = database.transaction(['documents', 'readings']);
  const stored = await tables.objectStore('documents').get(id);
  if (stored === undefined) return null;
  const keys = takesIn(stored).flatMap((take) => keyInTake(take) ?? []);
  const texts = new Map<string, unknown>();
  for (const key of keys) texts.set(key, await tables.objectStore('readings').get(key));
  return { whole: withTexts(stored, texts), parsed: parseStored(stored, texts) };
}
