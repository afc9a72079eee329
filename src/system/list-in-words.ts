import { msg, str } from '@lit/localize';

/** "FL", "FL and FR", "FL, FR and FC". Throws RangeError for an empty list. */
export function listInWords(words: readonly string[]): string {
  const last = words.at(-1);
  if (last === undefined) throw new RangeError('a list in words has at least one word, got 0');
  const before = words.slice(0, -1);
  return before.length === 0 ? last : msg(str`${before.join(', ')} and ${last}`);
}
