import type { Position, SessionDocument } from './document';

/** The position of an id, among the current one and those takes were made at; null when there is none. */
export function findPosition({ position, takes }: SessionDocument, id: string): Position | null {
  return [position, ...takes.map((take) => take.position)].find((one) => one.id === id) ?? null;
}

/** The document with the microphone there; the tape distance is the one its takes were read with. */
export function standAt(document: SessionDocument, position: Position): SessionDocument {
  const readings = document.takes.findLast(
    (take) => take.position.id === position.id && take.readings && !take.readings.absolute,
  )?.readings;
  if (!readings) return { ...document, position };
  const { referenceDistanceMetres } = readings;
  return { ...document, position, conditions: { ...document.conditions, referenceDistanceMetres } };
}
