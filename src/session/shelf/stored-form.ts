import type { Readings } from '../../reading/reading';
import type { SessionDocument, TakeRecord } from '../document';
import { parseSession, type ParsedSession } from './parse-session';

/** A document as it is stored: the readings of its takes are texts of JSON. */
export interface StoredForm extends Omit<SessionDocument, 'takes'> {
  readonly takes: readonly (Omit<TakeRecord, 'readings'> & { readonly readings: string | null })[];
}

/** Readings do not change, and are stored anew with every change of their session. */
const written = new WeakMap<Readings, string>();

/**
 * A document as it is to be stored. The browser copies a text at once, where it would walk through a
 * hundred thousand numbers. `pause` is waited for after each readings that are written for the first
 * time: all of them at once would hold up the screen.
 */
export async function toStored(
  document: SessionDocument,
  pause: () => Promise<void>,
): Promise<StoredForm> {
  for (const { readings } of document.takes) {
    if (!readings || written.has(readings)) continue;
    written.set(readings, JSON.stringify(readings));
    await pause();
  }
  return {
    ...document,
    takes: document.takes.map((take) => ({
      ...take,
      readings: take.readings && (written.get(take.readings) ?? null),
    })),
  };
}

/** Holds a stored value of any version, in this form or as it was stored before, against the schema. */
export function parseStored(stored: unknown): ParsedSession {
  return parseSession(withReadings(stored));
}

/** The value with its readings read; where a text is no JSON the schema refuses it as it is. */
function withReadings(stored: unknown): unknown {
  if (!isWithTakes(stored)) return stored;
  return { ...stored, takes: stored.takes.map(readTake) };
}

function readTake(take: unknown): unknown {
  if (typeof take !== 'object' || take === null || !('readings' in take)) return take;
  if (typeof take.readings !== 'string') return take;
  try {
    return { ...take, readings: JSON.parse(take.readings) as unknown };
  } catch {
    return take;
  }
}

function isWithTakes(stored: unknown): stored is { readonly takes: readonly unknown[] } {
  return (
    typeof stored === 'object' &&
    stored !== null &&
    'takes' in stored &&
    Array.isArray(stored.takes)
  );
}
