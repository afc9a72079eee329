import { msg } from '@lit/localize';
import type { GroupId } from './channel';

const words: Readonly<Record<GroupId, () => string>> = {
  fronts: () => msg('fronts'),
  centre: () => msg('centre'),
  wides: () => msg('wides'),
  sides: () => msg('side surrounds'),
  backs: () => msg('back surrounds'),
  'front heights': () => msg('front heights'),
  'middle heights': () => msg('middle heights'),
  'back heights': () => msg('back heights'),
  subs: () => msg('subs'),
};

/** A group in the language in force, as it stands within a sentence. */
export function groupWord(group: GroupId): string {
  return words[group]();
}
