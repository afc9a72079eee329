import type { Position, SessionDocument } from './document';

/** The position of an id, among the current one and those takes were made at; null when there is none. */
export function findPosition({ position, takes }: SessionDocument, id: string): Position | null {
  return [position, ...takes.map((take) => take.position)].find((one) => one.id === id) ?? null;
}
