import type { Readings } from '../../reading/reading';
import type { SessionDocument, TakeRecord } from '../document';
import { foundReadings, keyInTake, keyOfReadings, takesIn, type KeptAt } from './kept-readings';
import { parseSession, type ParsedSession } from './parse-session';

/** A document as it is stored: the readings of its takes lie beside it. */
export interface StoredForm extends Omit<SessionDocument, 'takes'> {
  readonly takes: readonly (Omit<TakeRecord, 'readings'> & { readonly readings: KeptAt | null })[];
}

/** What is stored of a document: itself, and its readings by the keys that stand in it. */
export interface ToStore {
  readonly stored: StoredForm;
  readonly readings: ReadonlyMap<string, Readings>;
}

/** A document as it is to be stored; a few kilobytes, however many takes it has. */
export function toStored(document: SessionDocument): ToStore {
  const readings = new Map<string, Readings>();
  const takes = document.takes.map((take) => {
    if (!take.readings) return { ...take, readings: null };
    const kept = keyOfReadings(take.readings);
    readings.set(kept, take.readings);
    return { ...take, readings: { kept } };
  });
  return { stored: { ...document, takes }, readings };
}

/**
 * A stored value of any version with the texts of its readings put in. A take whose readings are
 * lost has none: they are made again from its recording.
 */
export function withTexts(stored: unknown, texts: ReadonlyMap<string, unknown>): unknown {
  const takes = takesIn(stored);
  if (!takes.some((take) => keyInTake(take) !== null)) return stored;
  const put = (take: unknown): unknown => {
    const key = keyInTake(take);
    return key === null ? take : { ...(take as object), readings: texts.get(key) ?? null };
  };
  return { ...(stored as object), takes: takes.map(put) };
}

/** Holds a stored value of any version, its texts beside it, against the schema. */
export function parseStored(
  stored: unknown,
  texts: ReadonlyMap<string, unknown> = new Map(),
): ParsedSession {
  const parsed = parseSession(withReadings(withTexts(stored, texts)));
  if (!('document' in parsed)) return parsed;
  for (const [at, { readings }] of parsed.document.takes.entries()) {
    const key = keyInTake(takesIn(stored)[at]);
    if (readings && key !== null) foundReadings(readings, key);
  }
  return parsed;
}

/** The value with its readings read; where a text is no JSON the schema refuses it as it is. */
function withReadings(stored: unknown): unknown {
  const takes = takesIn(stored);
  return takes.length === 0 ? stored : { ...(stored as object), takes: takes.map(readTake) };
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
