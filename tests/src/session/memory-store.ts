import { captureIdsOf } from '../../../src/session/capture-ids';
import type { SessionDocument } from '../../../src/session/document';
import type { SessionStore } from '../../../src/session/session-store';
import { inListOrder, type StoredSession } from '../../../src/session/shelf/stored-session';
import { summariseSession } from '../../../src/session/shelf/summarise-session';
import type { Trouble } from '../../../src/trouble';

/** A store in memory that can be made to fail. */
export function memoryStore() {
  const held = {
    /** Every save, oldest first. */
    documents: [] as SessionDocument[],
    captures: new Map<string, Float32Array>(),
    full: null as Trouble | null,
    /** Sessions by their id, as they are stored now. */
    sessions: new Map<string, SessionDocument>(),
    order: new Map<string, number>(),
    deleted: new Set<string>(),
    last: null as string | null,
  };

  const listed = (document: SessionDocument): StoredSession => ({
    id: document.id,
    name: document.name,
    order: held.order.get(document.id) ?? 0,
    deleted: held.deleted.has(document.id),
    summary: summariseSession(document, document.createdAt),
    problem: null,
  });

  const store: SessionStore = {
    load: () => Promise.resolve(held.sessions.get(held.last ?? '') ?? null),
    save(document, last = true) {
      if (held.full) return Promise.resolve(held.full);
      held.documents.push(document);
      held.sessions.set(document.id, document);
      held.order.set(document.id, held.documents.length);
      if (last) held.last = document.id;
      return Promise.resolve(null);
    },
    saveCapture(id, samples) {
      if (!held.full) held.captures.set(id, samples);
      return Promise.resolve(held.full);
    },
    loadCapture: (id) => Promise.resolve(held.captures.get(id) ?? null),
    list: () => Promise.resolve(inListOrder([...held.sessions.values()].map(listed))),
    read: (id) => Promise.resolve(held.sessions.get(id) ?? null),
    makeLast(id) {
      held.last = id;
      return Promise.resolve(null);
    },
    markDeleted(id, deleted) {
      if (held.full) return Promise.resolve(held.full);
      if (deleted) held.deleted.add(id);
      else held.deleted.delete(id);
      return Promise.resolve(null);
    },
    remove(id, kept, marked = false) {
      for (const one of marked && id !== null ? [id] : [...held.deleted]) {
        if (one === held.last || (id !== null && one !== id)) continue;
        held.sessions.delete(one);
        held.deleted.delete(one);
      }
      const named = [...held.sessions.values()].flatMap(captureIdsOf);
      for (const one of [...held.captures.keys()]) {
        if (!kept.has(one) && !named.includes(one)) held.captures.delete(one);
      }
      return Promise.resolve(null);
    },
    removeCaptures(ids) {
      for (const id of ids) held.captures.delete(id);
      return Promise.resolve(null);
    },
  };
  return { held, store };
}
