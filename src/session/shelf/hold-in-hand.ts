import { isTrouble, type Trouble } from '../../trouble';
import { captureIdsOf } from '../capture-ids';
import type { SessionDocument } from '../document';
import type { SessionStore } from '../session-store';
import { inListOrder, type StoredSession } from './stored-session';
import { summariseSession } from './summarise-session';

/**
 * A store that keeps in memory what the one behind it would not save, so that it can still be
 * worked on, listed, opened and saved as a file while the page lives. The trouble is passed on; what
 * is held is handed over as soon as the store saves again.
 */
export function holdInHand(store: SessionStore): SessionStore {
  const documents = new Map<string, SessionDocument>();
  const captures = new Map<string, Float32Array>();
  /** Sessions whose mark the store could not take. */
  const marks = new Map<string, boolean>();

  /** Gives what is left in hand to the store, in order; why something is still left, or null. */
  async function handOverCaptures(): Promise<Trouble | null> {
    for (const [id, samples] of captures) {
      const problem = await store.saveCapture(id, samples);
      if (problem) return problem;
      captures.delete(id);
    }
    return null;
  }

  async function handOverSessions(): Promise<Trouble | null> {
    for (const [id, document] of documents) {
      const problem = await store.save(document, false);
      if (problem) return problem;
      if (documents.get(id) === document) documents.delete(id);
    }
    for (const [id, deleted] of marks) {
      const problem = await store.markDeleted(id, deleted);
      if (problem) return problem;
      if (marks.get(id) === deleted) marks.delete(id);
    }
    return null;
  }

  /** Recordings first: what is stored names no sound that is not. */
  async function save(document: SessionDocument, last?: boolean): Promise<Trouble | null> {
    const unheard = await handOverCaptures();
    const problem = await store.save(document, last);
    if (problem) {
      documents.set(document.id, document);
      return problem;
    }
    documents.delete(document.id);
    return unheard ?? handOverSessions();
  }

  function listed(document: SessionDocument, order: number): StoredSession {
    const { id, name, createdAt } = document;
    const summary = summariseSession(document, createdAt);
    return { id, name, order, deleted: false, summary, problem: null };
  }

  return {
    load: () => store.load(),
    save,
    async saveCapture(id, samples) {
      const problem = await store.saveCapture(id, samples);
      if (problem) captures.set(id, samples);
      return problem;
    },
    loadCapture: (id) => Promise.resolve(captures.get(id) ?? store.loadCapture(id)),
    async list() {
      const stored = await store.list();
      if (isTrouble(stored) && documents.size === 0) return stored;
      const rest = isTrouble(stored) ? [] : stored.filter(({ id }) => !documents.has(id));
      const highest = rest.reduce((most, { order }) => Math.max(most, order), 0);
      const held = [...documents.values()].map((one, index) => listed(one, highest + 1 + index));
      return inListOrder(
        [...rest, ...held].map((one) => ({ ...one, deleted: marks.get(one.id) ?? one.deleted })),
      );
    },
    read: (id) => Promise.resolve(documents.get(id) ?? store.read(id)),
    makeLast(id) {
      const held = documents.get(id);
      return held ? save(held) : store.makeLast(id);
    },
    async markDeleted(id, deleted) {
      const problem = documents.has(id) ? null : await store.markDeleted(id, deleted);
      if (problem || documents.has(id)) marks.set(id, deleted);
      else marks.delete(id);
      return problem;
    },
    async remove(id, kept) {
      const marked = id !== null && marks.get(id) === true;
      const others = [...documents.values()].filter((one) => !(marked && one.id === id));
      const staying = new Set([...kept, ...others.flatMap(captureIdsOf)]);
      const problem = await store.remove(id, staying, marked);
      if (problem || !marked) return problem;
      const gone = documents.get(id);
      for (const one of gone ? captureIdsOf(gone) : []) if (!staying.has(one)) captures.delete(one);
      documents.delete(id);
      marks.delete(id);
      return null;
    },
    async removeCaptures(ids) {
      for (const id of ids) captures.delete(id);
      return store.removeCaptures(ids);
    },
  };
}
