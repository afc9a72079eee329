import * as v from 'valibot';
import { trouble, type Trouble } from '../trouble';
import type { SessionDocument } from './document';
import { migrateSession } from './migrate-session';
import type { SessionStore } from './session-store';
import { openDatabase, type StoreDatabase } from './store-database';
import { sessionSchema } from './store-schema';

const lastKey = 'last session';

/**
 * The store of this browser (IndexedDB): documents as plain JSON values, captures as Float32Array
 * beside them. A stored document that does not match its schema is refused and kept aside.
 * Opens at first use; a browser that stores nothing answers every call with a Trouble.
 */
export function openStore(name = 'leadline'): SessionStore {
  let opened: Promise<StoreDatabase> | null = null;
  const forget = (): void => {
    opened = null;
  };

  async function withDatabase<T>(
    doing: string,
    work: (database: StoreDatabase) => Promise<T>,
  ): Promise<T | Trouble> {
    try {
      opened ??= openDatabase(name, forget);
      return await work(await opened);
    } catch (error) {
      forget();
      return storageTrouble(doing, error);
    }
  }

  return {
    load: () => withDatabase('read the saved session', loadLast),
    save: (document) =>
      withDatabase('save the session', async (database) => {
        const tables = database.transaction(['documents', 'meta'], 'readwrite');
        await Promise.all([
          tables.objectStore('documents').put(document, document.id),
          tables.objectStore('meta').put(document.id, lastKey),
          tables.done,
        ]);
        return null;
      }),
    saveCapture: (id, samples) =>
      withDatabase('save the recording of the take', async (database) => {
        await database.put('captures', samples, id);
        return null;
      }),
    loadCapture: (id) =>
      withDatabase('read the recording of the take', async (database) => {
        const stored = await database.get('captures', id);
        if (stored === undefined) return null;
        if (stored instanceof Float32Array && stored.every(Number.isFinite)) return stored;
        return trouble(
          'storage',
          `The stored recording ${id} is damaged: it is not a row of numbers. Run the take again.`,
        );
      }),
  };
}

async function loadLast(database: StoreDatabase): Promise<SessionDocument | Trouble | null> {
  const id = await database.get('meta', lastKey);
  if (typeof id !== 'string') return null;
  const stored = await database.get('documents', id);
  if (stored === undefined) return null;
  if (isNewer(stored)) {
    return trouble(
      'storage',
      'The saved session was made by a newer Leadline and is left untouched; reload to get that version. A fresh session is open instead.',
    );
  }
  const parsed = v.safeParse(sessionSchema, migrateSession(stored));
  if (parsed.success) return parsed.output;
  const why = whereAndWhy(parsed.issues[0]);
  await keepAside(database, id, stored, why);
  return trouble(
    'storage',
    `The saved session is damaged (${why}). It is kept aside in this browser, unchanged, and a fresh session is open instead.`,
  );
}

function isNewer(stored: unknown): boolean {
  return (
    typeof stored === 'object' &&
    stored !== null &&
    'version' in stored &&
    typeof stored.version === 'number' &&
    stored.version > 2
  );
}

/** Moves a damaged document out of the way in one transaction: kept whole, or not touched at all. */
async function keepAside(
  database: StoreDatabase,
  id: string,
  value: unknown,
  why: string,
): Promise<void> {
  const tables = database.transaction(['documents', 'aside', 'meta'], 'readwrite');
  await Promise.all([
    tables.objectStore('aside').add({ keptAt: new Date().toISOString(), why, value }),
    tables.objectStore('documents').delete(id),
    tables.objectStore('meta').delete(lastKey),
    tables.done,
  ]);
}

function whereAndWhy(issue: v.BaseIssue<unknown>): string {
  const where = v.getDotPath(issue) ?? 'the whole document';
  if (issue.input === undefined) return `${where} is missing`;
  const expected = issue.expected ? `expected ${issue.expected}` : issue.message;
  return `${where}: ${expected}, found ${issue.received}`;
}

function storageTrouble(doing: string, error: unknown): Trouble {
  if (error instanceof Error && error.name === 'QuotaExceededError') {
    return trouble(
      'storage',
      `This browser has no room left to ${doing}. Everything is still here until the page closes: free some disk space, then change anything to save again.`,
    );
  }
  const why = error instanceof Error ? error.message : String(error);
  return trouble(
    'storage',
    `This browser would not ${doing} (${why}). Private windows often store nothing; what is on screen is lost when the page closes.`,
  );
}
