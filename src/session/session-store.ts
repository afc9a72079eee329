import type { Trouble } from '../trouble';
import type { SessionDocument } from './document';
import type { StoredSession } from './shelf/stored-session';

/** Where sessions and captures outlive the page. Nothing here throws for what the world does. */
export interface SessionStore {
  /** The session last worked on; null when there is none. */
  load(): Promise<SessionDocument | Trouble | null>;
  /** Saves a session; unless `last` is false it is the one last worked on from now on. */
  save(document: SessionDocument, last?: boolean): Promise<Trouble | null>;
  saveCapture(id: string, samples: Float32Array): Promise<Trouble | null>;
  loadCapture(id: string): Promise<Float32Array | Trouble | null>;
  /** All sessions, the one changed last first, those marked deleted with them. */
  list(): Promise<readonly StoredSession[] | Trouble>;
  /** A session by its id, left where it is when it cannot be read; null when there is none. */
  read(id: string): Promise<SessionDocument | Trouble | null>;
  /** Makes a stored session the one last worked on. */
  makeLast(id: string): Promise<Trouble | null>;
  /** Marks a session as deleted, or no longer; it stays where it is. */
  markDeleted(id: string, deleted: boolean): Promise<Trouble | null>;
  /**
   * Removes sessions that are marked deleted, only the one of `id` unless that is null, and all
   * captures that then neither a session nor `kept` names. `marked` says that the one of `id` is to go
   * although there was no room for its mark.
   */
  remove(id: string | null, kept: ReadonlySet<string>, marked?: boolean): Promise<Trouble | null>;
  /** Removes captures by id, such as those of a file that could not be opened whole. */
  removeCaptures(ids: readonly string[]): Promise<Trouble | null>;
}
