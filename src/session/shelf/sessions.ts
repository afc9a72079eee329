import type { SessionDocument } from '../document';
import type { StoredSession } from './stored-session';

/** What the screens show of the sessions in this browser. */
export interface SessionsState {
  /** The one changed last first, those marked deleted with them; null before they were looked at. */
  readonly stored: readonly StoredSession[] | null;
  /** The file that is being saved or opened; null when there is none. */
  readonly file: { readonly what: 'Saving' | 'Opening'; readonly progress: number } | null;
  /** The earlier session that the one on the bench is held against; null for none. */
  readonly earlier: SessionDocument | null;
}

/** Nothing looked at yet. */
export const sessionsUnseen: SessionsState = { stored: null, file: null, earlier: null };

/**
 * The sessions of this browser as the screens use them. Troubles are raised on the bench; while
 * something runs everything but `look` is refused. Nothing here throws for what the world does.
 */
export interface Sessions {
  /** Reads the list again. */
  look(): Promise<void>;
  /** Puts a stored session on the bench; the one before stays in the list. */
  open(id: string): Promise<void>;
  /** Begins a new session. */
  create(): Promise<void>;
  /** Copies a session; both share their recordings, which never change. */
  duplicate(id: string): Promise<void>;
  rename(id: string, name: string): Promise<void>;
  /**
   * Marks a session as deleted. It can be brought back until it is removed or the page is left; of
   * the session on the bench, the next in the list takes the place.
   */
  delete(id: string): Promise<void>;
  /** Brings back a session marked as deleted. */
  restore(id: string): Promise<void>;
  /** Removes a session marked as deleted, with the recordings that no other session has. */
  remove(id: string): Promise<void>;
  /** The session on the bench with its recordings as one file; null when it could not be made. */
  saveFile(): Promise<{ readonly name: string; readonly blob: Blob } | null>;
  /** Opens a session file as a session of its own, beside all that are there. */
  openFile(file: File): Promise<void>;
  /** Holds the session on the bench against a stored one, which stays as it is; null: against none. */
  compareWith(id: string | null): Promise<void>;
  /** Holds it against the session of a file, which is read and kept nowhere. */
  compareWithFile(file: File): Promise<void>;
}
