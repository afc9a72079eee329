import type { SessionDocument } from '../document';
import {
  capturesOfHistory,
  noHistory,
  noteStep,
  redoStep,
  undoStep,
  type History,
} from './history';

/** What undo and redo would do now, by name; null: nothing. */
export interface HistoryNames {
  readonly undo: string | null;
  readonly redo: string | null;
}

/** Names of a session in which nothing has happened. */
export const noHistoryNames: HistoryNames = { undo: null, redo: null };

/** The histories of the sessions of this page, each by its session's id, as long as the page lives. */
export class Histories {
  readonly #kept = new Map<string, History>();
  #runs = 0;
  #running: { readonly number: number; readonly step: string | null } | null = null;

  /** What is changed from now on without a name belongs to one step; null: to what came before. */
  beginRun(step: string | null): void {
    this.#running = { number: ++this.#runs, step };
  }

  endRun(): void {
    this.#running = null;
  }

  /** Notes a change; see Desk.change for its name. */
  note(before: SessionDocument, after: SessionDocument, name?: string | null): void {
    const running = name === undefined ? this.#running : null;
    const step = name ?? running?.step ?? null;
    if (step === null) return;
    const run = running?.number ?? null;
    const at = performance.now();
    const history = noteStep(this.#of(after.id), { name: step, run, at, before, after });
    this.#kept.set(after.id, history);
  }

  /** The document one step back or forth; null when there is none. */
  walk(way: 'undo' | 'redo', present: SessionDocument): SessionDocument | null {
    const history = this.#of(present.id);
    const moved = way === 'undo' ? undoStep(history, present) : redoStep(history, present);
    if (moved === null) return null;
    this.#kept.set(present.id, moved.history);
    return moved.document;
  }

  namesOf(id: string): HistoryNames {
    const { past, future } = this.#of(id);
    return { undo: past.at(-1)?.name ?? null, redo: future.at(-1)?.name ?? null };
  }

  /** The history of a session that is removed for good. */
  forget(id: string): void {
    this.#kept.delete(id);
  }

  /** All captures that undo or redo could bring back, in any session of this page. */
  captures(): Set<string> {
    return new Set([...this.#kept.values()].flatMap((one) => [...capturesOfHistory(one)]));
  }

  #of(id: string): History {
    return this.#kept.get(id) ?? noHistory;
  }
}
