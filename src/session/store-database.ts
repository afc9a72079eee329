import { openDB, type DBSchema, type IDBPDatabase } from 'idb';

/** A stored value that could not be read, kept as it was found. */
export interface KeptAside {
  readonly keptAt: string;
  readonly why: string;
  readonly value: unknown;
}

/** Tables of version 1. Nothing read from them is trusted: documents are `unknown`. */
export interface StoreTables extends DBSchema {
  documents: { key: string; value: unknown };
  captures: { key: string; value: unknown };
  aside: { key: number; value: KeptAside };
  meta: { key: string; value: unknown };
}

export type StoreDatabase = IDBPDatabase<StoreTables>;

/** Opens the database, making its tables when it is new. Rejects where the browser refuses. */
export async function openDatabase(name: string, onGone: () => void): Promise<StoreDatabase> {
  const database = await openDB<StoreTables>(name, 1, {
    upgrade(fresh) {
      fresh.createObjectStore('documents');
      fresh.createObjectStore('captures');
      fresh.createObjectStore('aside', { autoIncrement: true });
      fresh.createObjectStore('meta');
    },
    // A later version waits for this page to let go of the tables.
    blocking: (_current, _wanted, event) => {
      (event.target as IDBDatabase).close();
      onGone();
    },
    terminated: onGone,
  });
  return database;
}
