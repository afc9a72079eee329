import { msg, str } from '@lit/localize';
import { isTrouble, trouble, type Trouble } from '../../trouble';
import { captureIdsOf } from '../capture-ids';
import type { Desk, Work } from '../desk';
import type { SessionDocument } from '../document';
import { createFileDesk } from '../file/file-desk';
import { newSession } from '../new-session';
import type { Sessions, SessionsState } from './sessions';

/** The sessions of a desk; `arrived` is called when another session has come onto it. */
export function createSessionDesk(desk: Desk, arrived: () => void): Sessions {
  const { store } = desk.parts;

  function show(changes: Partial<SessionsState>): void {
    desk.set({ sessions: { ...desk.state.sessions, ...changes } });
  }

  async function look(): Promise<void> {
    const stored = await store.list();
    if (isTrouble(stored)) desk.raise(stored);
    else show({ stored });
  }

  /** Runs one thing on the sessions, after everything changed so far is saved, and lists anew. */
  async function run(what: string, work: Work): Promise<void> {
    const before = desk.state.document.id;
    await desk.run({ what, step: null }, async (signal) => {
      await desk.settle();
      const problem = await work(signal);
      await look();
      return problem;
    });
    if (desk.state.document.id !== before) {
      show({ earlier: null });
      arrived();
    }
    // There may be room now.
    desk.saveAgain();
  }

  async function read(id: string): Promise<SessionDocument | Trouble> {
    const { document } = desk.state;
    return id === document.id ? document : ((await store.read(id)) ?? gone());
  }

  async function open(id: string): Promise<Trouble | null> {
    if (id === desk.state.document.id) return null;
    const document = await read(id);
    if (isTrouble(document)) return document;
    desk.adopt(document);
    const problem = await store.makeLast(id);
    if (problem) desk.showUnsaved(problem);
    return problem;
  }

  async function create(): Promise<Trouble | null> {
    const { newId, now } = desk.parts;
    const fresh = newSession(newId(), now());
    const problem = await store.save(fresh);
    desk.adopt(fresh);
    if (problem) desk.showUnsaved(problem);
    return problem;
  }

  /** Puts the next session of the list on the desk, or a new one where there is none. */
  async function openAnother(): Promise<Trouble | null> {
    const { id: here } = desk.state.document;
    const stored = await store.list();
    const others = isTrouble(stored) ? [] : stored;
    for (const { id, deleted, summary } of others) {
      if (id === here || deleted || summary === null) continue;
      const problem = await open(id);
      if (desk.state.document.id === id) return problem;
    }
    return create();
  }

  return {
    look,
    open: (id) => run(msg('Opening the session'), () => open(id)),
    create: () => run(msg('The new session'), create),
    duplicate: (id) =>
      run(msg('Duplicating the session'), async () => {
        const document = await read(id);
        if (isTrouble(document)) return document;
        const { newId, now } = desk.parts;
        const name = msg(str`Copy of ${document.name}`);
        return store.save({ ...document, id: newId(), name, createdAt: now() }, false);
      }),
    rename: (id, name) =>
      run(msg('Renaming the session'), async () => {
        if (id === desk.state.document.id) {
          desk.change((document) => ({ ...document, name }), msg('Rename session'));
          await desk.settle();
          return null;
        }
        const document = await read(id);
        return isTrouble(document) ? document : store.save({ ...document, name }, false);
      }),
    delete: (id) =>
      run(msg('Deleting the session'), async () => {
        const problem = id === desk.state.document.id ? await openAnother() : null;
        if (id === desk.state.document.id) return problem;
        return (await store.markDeleted(id, true)) ?? problem;
      }),
    restore: (id) => run(msg('Bringing back the session'), () => store.markDeleted(id, false)),
    remove: (id) =>
      run(msg('Removing the session'), async () => {
        if (id === desk.state.document.id) return null;
        desk.histories.forget(id);
        const here = captureIdsOf(desk.state.document);
        return store.remove(id, new Set([...desk.histories.captures(), ...here]));
      }),
    async compareWith(id) {
      if (id === null) return show({ earlier: null });
      await run(msg('Reading the earlier session'), async () => {
        const earlier = await read(id);
        if (isTrouble(earlier)) return earlier;
        const refused = desk.refuses(earlier);
        if (!refused) show({ earlier });
        return refused;
      });
    },
    ...createFileDesk(desk, run, show),
  };
}

const gone = () =>
  trouble(
    'storage',
    msg('This session is no longer in this browser. Open it from its file, if there is one.'),
  );
