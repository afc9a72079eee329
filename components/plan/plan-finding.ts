import { msg, str } from '@lit/localize';
import type { PlaceNote } from '../../src/system/place-notes';
import { asSentence, countInWords } from './layout-words';

/** What the notes on a plan come to, in one sentence for a title. */
export function planFinding(notes: readonly PlaceNote[]): string {
  const count = (kind: PlaceNote['kind']): number =>
    new Set(notes.filter((note) => note.kind === kind).flatMap(({ labels }) => labels)).size;
  const outside = count('room');
  if (outside > 0) return msg(str`${speakers(outside)} outside the room as it is drawn`);
  const shared = count('spot');
  if (shared > 0) return msg(str`${asSentence(countInWords(shared))} speakers share a spot`);
  const off = count('range');
  if (off > 0) return msg(str`${speakers(off)} outside the range of the standard`);
  return count('unequal') > 0
    ? msg('A pair stands at unequal angles')
    : msg('Every speaker stands within its range');
}

function speakers(count: number): string {
  return `${asSentence(countInWords(count))} ${count === 1 ? msg('speaker stands') : msg('speakers stand')}`;
}
