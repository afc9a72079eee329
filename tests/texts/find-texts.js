/** Words that every language has: units and names of quantities of the trade. */
const units =
  /(?<!\p{L})(?:dB(?:FS)?|SPL|k?Hz|ms|mm|cm|min|ft|in|px|ppm|[kMG]i?B|LFE|EDT|°[CF]|esc)(?!\p{L})/giu;
const visible =
  /^(?:aria-label|aria-description|aria-roledescription|aria-valuetext|title|placeholder|alt|label|hint|heading|caption|note)$/;

/** True for words that a person reads, rather than units, keys or names of colours. */
export const hasWords = (text) => /\p{L}{2}/u.test(text.replace(units, ''));

/** True for what begins as a sentence does, or is one: two words or more, or a full stop. */
export function isSentence(text) {
  if (/^M[-\d]/.test(text) || !/^\s*[\p{Lu}“]/u.test(text)) return false;
  const words = text.replace(units, '').match(/\p{L}[\p{L}-]+/gu) ?? [];
  return words.length > 1 || (words.length > 0 && /[^.]\.$/.test(text));
}

/**
 * Pieces of an html or svg template that stand between its expressions, which are `\u0001`: the
 * texts and the visible attributes that hold words, in order.
 */
export function textsOfMarkup(pieces) {
  const markup = pieces
    .join('\u0001')
    .replace(/<!--.*?-->/gs, '')
    .replace(/<(style|script)\b.*?<\/\1>/gs, '');
  const texts = [];
  // Attributes first: what is left then has no quotes that hold a ">".
  const bare = markup.replace(/([.?@]?[\w-]+)="([^"]*)"/g, (whole, name, value) => {
    if (visible.test(name.replace(/^\./, '')) && hasWords(value)) texts.push(value);
    return '';
  });
  for (const text of bare.split(/<\/?[a-zA-Z][^>]*>/)) {
    if (hasWords(text)) texts.push(text);
  }
  return texts.map((text) => text.replaceAll('\u0001', '…').replace(/\s+/g, ' ').trim());
}
