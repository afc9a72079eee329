import type { SessionDocument } from '../../../src/session/document';
import type { SessionStore } from '../../../src/session/session-store';
import type { Trouble } from '../../../src/trouble';

/** A store in memory that can be made to fail. */
export function memoryStore() {
  const held = {
    documents: [] as SessionDocument[],
    captures: new Map<string, Float32Array>(),
    full: null as Trouble | null,
  };
  const store: SessionStore = {
    load: () => Promise.resolve(held.documents.at(-1) ?? null),
    save(document) {
      if (!held.full) held.documents.push(document);
      return Promise.resolve(held.full);
    },
    saveCapture(id, samples) {
      if (!held.full) held.captures.set(id, samples);
      return Promise.resolve(held.full);
    },
    loadCapture: (id) => Promise.resolve(held.captures.get(id) ?? null),
  };
  return { held, store };
}
