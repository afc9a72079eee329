import type { Trouble } from '../../trouble';
import type { SessionStore } from '../session-store';

/** The store, calling `say` after each change of its sessions that it took. */
export function tellSaves(store: SessionStore, say: () => void): SessionStore {
  async function told(change: Promise<Trouble | null>): Promise<Trouble | null> {
    const problem = await change;
    if (!problem) say();
    return problem;
  }

  return {
    ...store,
    save: (document, last) => told(store.save(document, last)),
    makeLast: (id) => told(store.makeLast(id)),
    markDeleted: (id, deleted) => told(store.markDeleted(id, deleted)),
    remove: (id, kept, marked) => told(store.remove(id, kept, marked)),
  };
}
