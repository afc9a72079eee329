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

  async function handOver(): Promise<void> {
    for (const [id, samples] of captures) {
      if (await store.saveCapture(id, samples)) return;
      captures.delete(id);
    }
    for (const [id, document] of documents) {
      if (await store.save(document, false)) return;
      if (documents.get(id) === document) documents.delete(id);
    }
  }

  async function save(document: SessionDocument, last?: boolean): Promise<Trouble | null> {
    const problem = await store.save(document, last);
    if (problem) documents.set(document.id, document);
    else {
      documents.delete(document.id);
      await handOver();
    }
    return problem;
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
      if (id !== null && marks.get(id)) {
        const problem = documents.delete(id) ? null : await store.markDeleted(id, true);
        if (problem) return problem;
        marks.delete(id);
      }
      const held = [...documents.values()].flatMap(captureIdsOf);
      return store.remove(id, new Set([...kept, ...held]));
    },
    async removeCaptures(ids) {
      for (const id of ids) captures.delete(id);
      return store.removeCaptures(ids);
    },
  };
}
