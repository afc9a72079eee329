import type { Page } from 'playwright-core';
import { parseStored } from '../../../src/session/shelf/stored-form';
import { keptOf, type KeptSession } from './kept-session';

/** What lies in the browser's store, looked at past the app. */
export interface FoundStore {
  readonly sessions: readonly KeptSession[];
  /** Keys of documents that do not match the schema, and of those kept aside. */
  readonly unreadable: readonly string[];
  /** Samples of each capture; 0 for what is no row of finite numbers. */
  readonly captures: Readonly<Record<string, number>>;
}

/** Reads all of the store, as any page of the same address can. */
export async function lookIntoStore(page: Page): Promise<FoundStore> {
  const { documents, readings, aside, captures } = await page.evaluate(async () => {
    const answer = <T>(request: IDBRequest<T>): Promise<T> =>
      new Promise((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error ?? new Error('the store would not answer'));
      });
    const database = await answer(indexedDB.open('leadline'));
    const tables = database.transaction(['documents', 'readings', 'aside', 'captures', 'pieces']);
    const documents: unknown[] = await answer(tables.objectStore('documents').getAll());
    const texts = tables.objectStore('readings');
    const readings = {
      keys: (await answer(texts.getAllKeys())).map(String),
      texts: await answer<unknown[]>(texts.getAll()),
    };
    const aside = await answer(tables.objectStore('aside').count());
    const keys = await answer(tables.objectStore('captures').getAllKeys());
    const captures: Record<string, number> = {};
    for (const key of keys) {
      const head: unknown = await answer(tables.objectStore('captures').get(key));
      const all = IDBKeyRange.bound([key], [key, []]);
      const pieces: unknown[] = await answer(tables.objectStore('pieces').getAll(all));
      let frames = 0;
      for (const piece of pieces) {
        const sound = piece instanceof Float32Array && piece.every(Number.isFinite);
        frames += sound ? piece.length : NaN;
      }
      const said = typeof head === 'object' && head !== null && 'frames' in head && head.frames;
      captures[String(key)] = said === frames ? frames : 0;
    }
    database.close();
    return { documents: JSON.stringify(documents), readings, aside, captures };
  });
  const sessions: KeptSession[] = [];
  const unreadable = Array.from({ length: aside }, (_, index) => `kept aside, ${index + 1}`);
  const texts = new Map(readings.keys.map((key, at) => [key, readings.texts[at]]));
  for (const stored of JSON.parse(documents) as unknown[]) {
    const parsed = parseStored(stored, texts);
    if ('document' in parsed) sessions.push(keptOf(parsed.document));
    else unreadable.push(parsed.why);
  }
  return { sessions, unreadable, captures };
}
