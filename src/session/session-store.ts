import type { Trouble } from '../trouble';
import type { SessionDocument } from './document';

/** Where sessions and captures outlive the page. Nothing here throws for what the world does. */
export interface SessionStore {
  /** The session last worked on; null when there is none. */
  load(): Promise<SessionDocument | Trouble | null>;
  save(document: SessionDocument): Promise<Trouble | null>;
  saveCapture(id: string, samples: Float32Array): Promise<Trouble | null>;
  loadCapture(id: string): Promise<Float32Array | Trouble | null>;
}
