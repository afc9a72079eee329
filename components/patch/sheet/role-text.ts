import { msg } from '@lit/localize';
import type { OutputRole } from '../../../src/system/sheet/processor-sheet';
import { readLabel, readNames } from './list-text';

/** The two words of a role, in the language in force; those of the program's own are read as well. */
const without = (): string => msg('unless');
const either = (): string => msg('or');

/** "BL, TpBL unless BL or BR": roles in their order. */
export function writeRoles(roles: readonly unknown[]): string {
  return (roles as readonly OutputRole[])
    .map(({ channel, onlyWithout }) =>
      onlyWithout ? `${channel} ${without()} ${onlyWithout.join(` ${either()} `)}` : channel,
    )
    .join(', ');
}

export function readRoles(text: string): { channel: string; onlyWithout?: string[] }[] {
  return readNames(text).map((role) => {
    const [channel = '', others] = splitAt(role, ['unless', without()]);
    if (others === undefined) return { channel: readLabel(channel) };
    const labels = splitAt(others, ['or', either()]).map(readLabel);
    return { channel: readLabel(channel), onlyWithout: labels.filter((label) => label !== '') };
  });
}

/** Parts a text at words that stand alone, in capitals or not. */
function splitAt(text: string, words: readonly string[]): string[] {
  const wanted = new Set(words.map((word) => word.toLowerCase()));
  const parts: string[][] = [[]];
  for (const word of text.split(/\s+/)) {
    if (wanted.has(word.toLowerCase())) parts.push([]);
    else parts.at(-1)?.push(word);
  }
  return parts.map((part) => part.join(' '));
}
