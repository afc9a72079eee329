import { msg, str } from '@lit/localize';
import { trouble, type Trouble } from '../trouble';
import type { SessionStore } from './session-store';
import { listDocuments } from './shelf/list-documents';
import { removeDocuments } from './shelf/remove-documents';
import { loadCapture, removeCaptures, saveCapture } from './shelf/store-captures';
import { loadLast, markDocument, readDocument, saveDocument } from './shelf/store-documents';
import { lastKey, openDatabase, type StoreDatabase } from './store-database';

/**
 * The store of this browser (IndexedDB): documents as plain JSON values, beside them the readings of
 * takes as texts and captures in pieces of Float32Array. A stored document that does not match its
 * schema is refused and kept aside.
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

  /** The same for work that answers nothing. */
  function change(
    doing: string,
    work: (database: StoreDatabase) => Promise<unknown>,
  ): Promise<Trouble | null> {
    return withDatabase(doing, async (database) => {
      await work(database);
      return null;
    });
  }

  return {
    load: () => withDatabase(msg('read the saved session'), loadLast),
    save: (document, last = true) =>
      change(msg('save the session'), (database) => saveDocument(database, document, last)),
    saveCapture: (id, samples) =>
      change(msg('save the recording of the take'), (database) =>
        saveCapture(database, id, samples),
      ),
    loadCapture: (id) =>
      withDatabase(msg('read the recording of the take'), (database) => loadCapture(database, id)),
    list: () => withDatabase(msg('list the sessions'), listDocuments),
    read: (id) => withDatabase(msg('read the session'), (database) => readDocument(database, id)),
    makeLast: (id) =>
      change(msg('open the session'), (database) => database.put('meta', id, lastKey)),
    markDeleted: (id, deleted) =>
      change(msg('delete the session'), (database) => markDocument(database, id, deleted)),
    remove: (id, kept, marked = false) =>
      change(msg('remove what was deleted'), (database) =>
        removeDocuments(database, id, kept, marked),
      ),
    removeCaptures: (ids) =>
      change(msg('remove the recordings'), (database) => removeCaptures(database, ids)),
  };
}

function storageTrouble(doing: string, error: unknown): Trouble {
  if (error instanceof Error && error.name === 'QuotaExceededError') {
    return trouble(
      'storage',
      msg(
        str`This browser has no room left to ${doing}. Everything is still here until the page closes: save the session as a file, remove sessions you no longer need, or free some disk space. It is saved by itself once there is room.`,
      ),
    );
  }
  if (error instanceof Error && error.name === 'VersionError') {
    return trouble(
      'storage',
      msg(
        str`This page is older than what saved the sessions in this browser, so it would not ${doing}. Nothing was changed; reload to get the newer version.`,
      ),
    );
  }
  const why = error instanceof Error ? error.message : String(error);
  return trouble(
    'storage',
    msg(
      str`This browser would not ${doing} (${why}). Private windows often store nothing; what is on screen is lost when the page closes, unless you save it as a file.`,
    ),
  );
}
