import { msg, str } from '@lit/localize';
import * as v from 'valibot';
import { breathe } from '../../breathe';
import { trouble, type Trouble } from '../../trouble';
import type { StoreDatabase } from '../store-database';
import { onDisk, undivided } from './undivided';

/**
 * Samples of a piece, at most: 1 MB. The browser copies what it is handed in the task that hands it
 * over, and a recording whole would hold up the screen.
 */
const pieceFrames = 2 ** 18;

/** What stands under the id of a capture; its samples lie beside it in pieces. */
const headSchema = v.object({ frames: v.pipe(v.number(), v.safeInteger(), v.minValue(0)) });

/** Keys of all pieces of a capture, in their order. */
export function piecesOf(id: string): IDBKeyRange {
  return IDBKeyRange.bound([id, 0], [id, Infinity]);
}

/**
 * Saves the samples of a capture, a piece a task, all or nothing: the pieces lie in one transaction,
 * which lives from one to the next.
 */
export async function saveCapture(
  database: StoreDatabase,
  id: string,
  samples: Float32Array,
): Promise<void> {
  const tables = database.transaction(['captures', 'pieces'], 'readwrite', onDisk);
  const pieces = tables.objectStore('pieces');
  await undivided(tables, async () => {
    await pieces.delete(piecesOf(id));
    for (let at = 0, n = 0; at < samples.length; at += pieceFrames, n++) {
      // Cut out of its buffer, which would go with it whole.
      await pieces.put(samples.slice(at, at + pieceFrames), [id, n]);
    }
    await tables.objectStore('captures').put({ frames: samples.length }, id);
  });
}

/** The samples of a capture; null when there is none, a Trouble where a piece or a number lacks. */
export async function loadCapture(
  database: StoreDatabase,
  id: string,
): Promise<Float32Array | Trouble | null> {
  const tables = database.transaction(['captures', 'pieces']);
  const stored = await tables.objectStore('captures').get(id);
  if (stored === undefined) return null;
  // Up to version 4 the samples themselves.
  if (stored instanceof Float32Array) return (await allFinite(stored)) ? stored : damaged(id);
  const head = v.safeParse(headSchema, stored);
  if (!head.success) return damaged(id);
  const { frames } = head.output;
  const pieces = tables.objectStore('pieces');
  const keys = await pieces.getAllKeys(piecesOf(id));
  if (frames > keys.length * pieceFrames) return damaged(id);
  const samples = new Float32Array(frames);
  let at = 0;
  for (const key of keys) {
    const piece = await pieces.get(key);
    if (!(piece instanceof Float32Array) || at + piece.length > frames) return damaged(id);
    if (!piece.every(Number.isFinite)) return damaged(id);
    samples.set(piece, at);
    at += piece.length;
  }
  return at === frames ? samples : damaged(id);
}

/** Removes captures with all their pieces. */
export async function removeCaptures(
  database: StoreDatabase,
  ids: readonly string[],
): Promise<void> {
  const tables = database.transaction(['captures', 'pieces'], 'readwrite');
  await undivided(tables, async () => {
    for (const id of ids) {
      await tables.objectStore('captures').delete(id);
      await tables.objectStore('pieces').delete(piecesOf(id));
    }
  });
}

async function allFinite(samples: Float32Array): Promise<boolean> {
  for (let at = 0; at < samples.length; at += pieceFrames) {
    await breathe();
    if (!samples.subarray(at, at + pieceFrames).every(Number.isFinite)) return false;
  }
  return true;
}

const damaged = (id: string): Trouble =>
  trouble(
    'storage',
    msg(
      str`The stored recording ${id} is damaged: it is not a row of numbers. Run the take again.`,
    ),
  );
