import { hashText } from '../take/schedule-id';
import type { Position } from './document';
import { newSession } from './new-session';

const seats = 100_000;

/** The practice room's seat of a position: the main seat for the first, another for each other. */
export function practiceSeat({ id }: Position): number {
  return id === newSession('', '').position.id ? 0 : 1 + (hashText(id) % seats);
}
