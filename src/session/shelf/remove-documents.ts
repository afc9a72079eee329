import { deletedKey, lastKey, type StoreDatabase } from '../store-database';
import { piecesOf } from './store-captures';
import { idsIn } from './store-documents';
import { undivided } from './undivided';

/**
 * Removes sessions marked as deleted, only the one of `id` unless it is null, never the one last
 * worked on, and then every capture that no stored value names, nor `kept`, and the readings that
 * none names. All or nothing. What a damaged or newer session names counts as named, wherever in it that stands. Of `id` it asks for no
 * mark when it is `marked` all the same. It writes as little as it can: on a full disk this makes room.
 */
export async function removeDocuments(
  database: StoreDatabase,
  id: string | null,
  kept: ReadonlySet<string>,
  isMarked = false,
): Promise<void> {
  const tables = database.transaction(
    ['documents', 'readings', 'summaries', 'captures', 'pieces', 'aside', 'meta'],
    'readwrite',
  );
  const documents = tables.objectStore('documents');
  const meta = tables.objectStore('meta');
  await undivided(tables, async () => {
    const last = await meta.get(lastKey);
    const marked = idsIn(await meta.get(deletedKey));
    const wanted = isMarked && id !== null ? [id] : marked;
    const going = wanted.filter((one) => one !== last && (id === null || one === id));
    for (const one of going) {
      await documents.delete(one);
      await tables.objectStore('summaries').delete(one);
    }
    const staying = marked.filter((one) => id !== null && !going.includes(one));
    if (staying.length === 0) await meta.delete(deletedKey);
    else if (staying.length < marked.length) await meta.put(staying, deletedKey);
    const beside = [tables.objectStore('captures'), tables.objectStore('readings')] as const;
    const unnamed = new Set<string>();
    for (const table of beside) for (const key of await table.getAllKeys()) unnamed.add(key);
    for (const one of kept) unnamed.delete(one);
    if (unnamed.size === 0) return;
    for (const source of [documents, tables.objectStore('aside')]) {
      for (let at = await source.openCursor(); at; at = await at.continue()) {
        forgetNamed(at.value, unnamed);
      }
    }
    for (const one of unnamed) {
      for (const table of beside) await table.delete(one);
      await tables.objectStore('pieces').delete(piecesOf(one));
    }
  });
}

/** Takes every text anywhere in a value out of the set. */
function forgetNamed(value: unknown, unnamed: Set<string>): void {
  if (typeof value === 'string') unnamed.delete(value);
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return;
  for (const part of Object.values(value)) forgetNamed(part, unnamed);
}
