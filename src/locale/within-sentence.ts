/**
 * A label or a sentence as it stands within another: its first letter small, but not in a word that
 * is written large, such as a channel or a unit.
 */
export function withinSentence(text: string): string {
  return /^\p{Lu}(?!\p{Lu})/u.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}
