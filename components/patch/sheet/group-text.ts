import type { GroupId } from '../../../src/system/channel';
import { groupIds } from '../../../src/system/group-ids';
import { groupWord } from '../../../src/system/group-word';
import { readNames, writeNames } from './list-text';

/** Groups in the words of the language in force; what names none stays as it is. */
export function writeGroups(groups: readonly unknown[]): string {
  return writeNames(groups.map((group) => (isGroup(group) ? groupWord(group) : group)));
}

/** Groups by their words or as a sheet's file names them; anything else stays, for the check to refuse. */
export function readGroups(text: string): string[] {
  return readNames(text).map((name) => {
    const wanted = name.toLowerCase();
    const meant = groupIds.find((id) => id === wanted || groupWord(id).toLowerCase() === wanted);
    return meant ?? name;
  });
}

function isGroup(value: unknown): value is GroupId {
  return groupIds.some((id) => id === value);
}
