import { lostFrom, type KeptSession } from './kept-session';
import type { FoundStore } from './look-into-store';

/** What the app said so far, by which the store is judged after a crash. */
export interface Ledger {
  /** The app said that this session is saved as it is here. */
  said(session: KeptSession): void;
  /** A session is about to be deleted: it may be there or not, but not in part. */
  mayGo(id: string): void;
  /** The app said that it is back. */
  stays(id: string): void;
  /** What is wrong with what was found, one sentence each. */
  judge(found: FoundStore): string[];
}

export function createLedger(): Ledger {
  const saved = new Map<string, KeptSession>();
  const leaving = new Set<string>();

  /** Every take names sound that is there, whole: as long as it was when it was first seen. */
  const lengths = new Map<string, number>();
  function soundFaults({ sessions, captures }: FoundStore): string[] {
    const faults: string[] = [];
    const named = new Set(sessions.flatMap(({ takes }) => takes.map((take) => take.captureId)));
    for (const id of named) {
      const length = captures[id];
      const before = lengths.get(id);
      if (length === undefined || length === 0) faults.push(`the sound ${id} is lost`);
      else if (before !== undefined && before !== length) faults.push(`the sound ${id} is cut`);
      else lengths.set(id, length);
    }
    for (const id of Object.keys(captures)) {
      if (!named.has(id)) faults.push(`the sound ${id} lies there and nothing names it`);
    }
    return faults;
  }

  return {
    said: (session) => void saved.set(session.id, session),
    mayGo: (id) => void leaving.add(id),
    stays: (id) => void leaving.delete(id),
    judge(found) {
      const faults = found.unreadable.map((one) => `the session ${one} cannot be read`);
      for (const [id, session] of saved) {
        const now = found.sessions.find((one) => one.id === id);
        if (now) faults.push(...lostFrom(session, now));
        else if (leaving.has(id)) saved.delete(id);
        else faults.push(`session ${session.name} is lost`);
      }
      return [...faults, ...soundFaults(found)];
    },
  };
}
