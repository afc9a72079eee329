import { openDB, type DBSchema, type IDBPDatabase } from 'idb';

/** A stored value that could not be read, kept as it was found. */
export interface KeptAside {
  readonly keptAt: string;
  readonly why: string;
  readonly value: unknown;
}

/** Tables of version 5. Nothing read from them is trusted: documents are `unknown`. */
export interface StoreTables extends DBSchema {
  documents: { key: string; value: unknown };
  /** How long each capture is; up to version 4 its samples themselves, which stay as they are. */
  captures: { key: string; value: unknown };
  /** Samples of captures, by id and number from 0. */
  pieces: { key: [string, number]; value: unknown };
  /** Readings of takes as texts of JSON, by the keys that documents name; they never change. */
  readings: { key: string; value: unknown };
  aside: { key: number; value: KeptAside };
  meta: { key: string; value: unknown };
  /** What the list says of each document; made again from the document where it is missing. */
  summaries: { key: string; value: unknown };
}

export type StoreDatabase = IDBPDatabase<StoreTables>;

/** Keys of the table `meta`. */
export const lastKey = 'last session';
export const deletedKey = 'deleted sessions';
export const orderKey = 'order of changes';

/**
 * Opens the database, making its tables when it is new, and those a version lacks when it is old:
 * what is stored stays as it is. Rejects where the browser refuses.
 */
export async function openDatabase(name: string, onGone: () => void): Promise<StoreDatabase> {
  const database = await openDB<StoreTables>(name, 5, {
    upgrade(older, from) {
      if (from < 1) {
        older.createObjectStore('documents');
        older.createObjectStore('captures');
        older.createObjectStore('aside', { autoIncrement: true });
        older.createObjectStore('meta');
      }
      if (from < 2) older.createObjectStore('summaries');
      // Version 3 has the tables of 2: a page of before could not read the documents of then.
      if (from < 4) older.createObjectStore('readings');
      if (from < 5) older.createObjectStore('pieces');
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
