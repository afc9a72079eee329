import { isTrouble, type Trouble } from '../../trouble';
import type { SessionDocument } from '../document';
import type { SessionStore } from '../session-store';
import { breathe } from '../../breathe';
import { fileStopped } from './file-trouble';
import type { OpenedFile } from './read-session-file';
import { sameValue } from './same-value';

export interface PlaceOptions {
  readonly newId: () => string;
  readonly signal: AbortSignal;
  /** From 0 to 1. */
  readonly onProgress: (progress: number) => void;
}

/** A session that came from a file, with what the store could not do about it; null: all was saved. */
export interface PlacedSession {
  readonly document: SessionDocument;
  readonly problem: Trouble | null;
}

/**
 * Puts an opened file's session into the store beside all others. One that is there already, alike,
 * is that one; one whose id another session has gets a new id, and its recordings new ids where
 * theirs are taken by other sound. The session is saved last: when a recording is refused, those
 * saved before are removed, and the Trouble says what was wrong.
 */
export async function placeSession(
  store: SessionStore,
  { document, captures, load }: OpenedFile,
  { newId, signal, onProgress }: PlaceOptions,
): Promise<PlacedSession | Trouble> {
  const renamed = new Map<string, string>();
  const added: string[] = [];
  let problem: Trouble | null = null;
  for (const [index, capture] of captures.entries()) {
    onProgress(index / captures.length);
    const samples = signal.aborted ? fileStopped() : await load(capture);
    if (isTrouble(samples)) {
      await store.removeCaptures(added);
      return samples;
    }
    const stored = await store.loadCapture(capture.id);
    if (stored !== null && !isTrouble(stored) && (await sameSound(stored, samples))) continue;
    const id = stored === null ? capture.id : newId();
    if (id !== capture.id) renamed.set(capture.id, id);
    problem = (await store.saveCapture(id, samples)) ?? problem;
    added.push(id);
  }
  if (signal.aborted) {
    await store.removeCaptures(added);
    return fileStopped();
  }
  const filed = withCaptures(document, renamed);
  const existing = await store.read(filed.id);
  const isKnown = existing !== null && !isTrouble(existing) && sameValue(existing, filed);
  if (isKnown) await store.markDeleted(filed.id, false);
  const placed = existing === null || isKnown ? filed : { ...filed, id: newId() };
  problem = (await store.save(placed)) ?? problem;
  onProgress(1);
  return { document: placed, problem };
}

/** The document with its captures under other ids. */
function withCaptures(
  document: SessionDocument,
  renamed: ReadonlyMap<string, string>,
): SessionDocument {
  if (renamed.size === 0) return document;
  const takes = document.takes.map((take) => ({
    ...take,
    captureId: renamed.get(take.captureId) ?? take.captureId,
    loopbackId: take.loopbackId === null ? null : (renamed.get(take.loopbackId) ?? take.loopbackId),
  }));
  return { ...document, takes };
}

/** Compared bit by bit, a piece at a time. */
async function sameSound(one: Float32Array, other: Float32Array): Promise<boolean> {
  if (one.length !== other.length) return false;
  const step = 2 ** 20;
  for (let at = 0; at < one.length; at += step) {
    if (at > 0) await breathe();
    const end = Math.min(one.length, at + step);
    for (let n = at; n < end; n++) if (!Object.is(one[n], other[n])) return false;
  }
  return true;
}
