import { msg, str } from '@lit/localize';
import * as v from 'valibot';
import { deletedKey, type StoreDatabase } from '../store-database';
import { finite } from '../../schema/schema-parts';
import { findStored } from './find-stored';
import { idsIn } from './store-documents';
import { inListOrder, type StoredSession } from './stored-session';
import { summariseSession, summarySchema } from './summarise-session';

const lineSchema = v.object({ ...summarySchema.entries, order: finite });

/**
 * All stored sessions, the one changed last first. A document without a line of its own, such as
 * one of an earlier version, is read whole for it; it counts as changed before all that have one.
 */
export async function listDocuments(database: StoreDatabase): Promise<StoredSession[]> {
  const tables = database.transaction(['documents', 'summaries', 'meta']);
  const [ids, keys, values, marked] = await Promise.all([
    tables.objectStore('documents').getAllKeys(),
    tables.objectStore('summaries').getAllKeys(),
    tables.objectStore('summaries').getAll(),
    tables.objectStore('meta').get(deletedKey),
  ]);
  const lines = new Map(keys.map((key, index) => [key, values[index]]));
  const deleted = new Set(idsIn(marked));
  const sessions: StoredSession[] = [];
  for (const id of ids) {
    const line = v.safeParse(lineSchema, lines.get(id));
    const known = line.success ? fromLine(line.output) : await fromDocument(database, id);
    if (known) sessions.push({ ...known, id, deleted: deleted.has(id) });
  }
  return inListOrder(sessions);
}

type Known = Omit<StoredSession, 'id' | 'deleted'>;

function fromLine({ order, ...summary }: v.InferOutput<typeof lineSchema>): Known {
  return { name: summary.name, order, summary, problem: null };
}

async function fromDocument(database: StoreDatabase, id: string): Promise<Known | null> {
  const found = await findStored(database, id);
  if (!found) return null;
  const { parsed, whole } = found;
  if (!('document' in parsed)) {
    return {
      name: nameIn(whole),
      order: 0,
      summary: null,
      problem: msg(str`It ${said(parsed)}.`),
    };
  }
  const { document } = parsed;
  const summary = summariseSession(document, document.createdAt);
  // Added only where it is still missing: what was saved since knows better.
  await database.add('summaries', { ...summary, order: 0 }, id).catch(() => undefined);
  return { name: document.name, order: 0, summary, problem: null };
}

function said({ newer, why }: { readonly newer: boolean; readonly why: string }): string {
  return newer ? msg('was made by a newer Leadline') : msg(str`is damaged: ${why}`);
}

function nameIn(stored: unknown): string {
  const named = typeof stored === 'object' && stored !== null && 'name' in stored;
  return named && typeof stored.name === 'string' ? stored.name : msg('A session without a name');
}
