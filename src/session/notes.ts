import type { SessionDocument } from './document';

/** Letters the notes of a session hold. */
export const mostNotes = 20_000;

/** The document with the tuner's notes, plain text; what is longer than it can hold is cut. */
export function withNotes(document: SessionDocument, notes: string): SessionDocument {
  return { ...document, notes: notes.slice(0, mostNotes) };
}
