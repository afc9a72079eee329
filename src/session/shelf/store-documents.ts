import { msg, str } from '@lit/localize';
import { breathe } from '../../breathe';
import { trouble, type Trouble } from '../../trouble';
import type { SessionDocument } from '../document';
import { deletedKey, lastKey, orderKey, type StoreDatabase } from '../store-database';
import { findStored } from './find-stored';
import { toStored } from './stored-form';
import { summariseSession } from './summarise-session';
import { onDisk, undivided } from './undivided';
import { writeTexts } from './write-readings';

/** The session last worked on. A damaged one is moved out of the way, whole. */
export async function loadLast(database: StoreDatabase): Promise<SessionDocument | Trouble | null> {
  const id = await database.get('meta', lastKey);
  if (typeof id !== 'string') return null;
  const found = await findStored(database, id);
  if (!found) return null;
  const { parsed, whole } = found;
  if ('document' in parsed) return parsed.document;
  if (parsed.newer) {
    return trouble(
      'storage',
      msg(
        'The saved session was made by a newer Leadline and is left untouched; reload to get that version. A fresh session is open instead.',
      ),
    );
  }
  await keepAside(database, id, whole, parsed.why);
  return trouble(
    'storage',
    msg(
      str`The saved session is damaged (${parsed.why}). It is kept aside in this browser, unchanged, and a fresh session is open instead.`,
    ),
  );
}

/** A session by its id; one that cannot be read stays where it is. */
export async function readDocument(
  database: StoreDatabase,
  id: string,
): Promise<SessionDocument | Trouble | null> {
  const parsed = (await findStored(database, id))?.parsed;
  if (!parsed) return null;
  if ('document' in parsed) return parsed.document;
  const advice = parsed.newer ? msg('Reload to get that version.') : msg('It is kept as it is.');
  return trouble('storage', msg(str`This session cannot be opened: ${parsed.why}. ${advice}`));
}

/** Saves a session with its readings and its line of the list, all or none. */
export async function saveDocument(
  database: StoreDatabase,
  document: SessionDocument,
  last: boolean,
): Promise<void> {
  const { stored, readings } = toStored(document);
  const texts = await writeTexts(database, readings, breathe);
  const tables = database.transaction(
    ['documents', 'readings', 'summaries', 'meta'],
    'readwrite',
    onDisk,
  );
  const meta = tables.objectStore('meta');
  const summary = summariseSession(document, new Date().toISOString());
  const work = async (): Promise<void> => {
    const order = orderAfter(await meta.get(orderKey));
    const beside = tables.objectStore('readings');
    for (const [key, one] of readings) {
      // Asked for each time: what was removed since, and came back by undo, is stored anew.
      if ((await beside.getKey(key)) === undefined) {
        await beside.put(texts.get(key) ?? JSON.stringify(one), key);
      }
    }
    await tables.objectStore('documents').put(stored, document.id);
    await tables.objectStore('summaries').put({ ...summary, order }, document.id);
    await meta.put(order, orderKey);
    if (last) await meta.put(document.id, lastKey);
  };
  await undivided(tables, work);
}

/** Puts a session among those marked as deleted, or takes it out of them. */
export async function markDocument(
  database: StoreDatabase,
  id: string,
  deleted: boolean,
): Promise<void> {
  const tables = database.transaction('meta', 'readwrite');
  await undivided(tables, async () => {
    const others = idsIn(await tables.store.get(deletedKey)).filter((one) => one !== id);
    await tables.store.put(deleted ? [...others, id] : others, deletedKey);
  });
}

/** Ids in a stored list of them. */
export function idsIn(stored: unknown): string[] {
  return Array.isArray(stored) ? stored.filter((one) => typeof one === 'string') : [];
}

function orderAfter(stored: unknown): number {
  return typeof stored === 'number' && Number.isFinite(stored) ? stored + 1 : 1;
}

/** Moves a damaged document out of the way in one transaction: kept whole, or not touched at all. */
async function keepAside(
  database: StoreDatabase,
  id: string,
  value: unknown,
  why: string,
): Promise<void> {
  const tables = database.transaction(['documents', 'aside', 'meta', 'summaries'], 'readwrite');
  await Promise.all([
    tables.objectStore('aside').add({ keptAt: new Date().toISOString(), why, value }),
    tables.objectStore('documents').delete(id),
    tables.objectStore('summaries').delete(id),
    tables.objectStore('meta').delete(lastKey),
    tables.done,
  ]);
}
