/** What a saved file is of; stands in its name. */
export interface FileFacts {
  /** Such as "5.1". */
  readonly layout: string;
  /** Label of the speaker; null for several. */
  readonly speaker: string | null;
  /** Name of the microphone's position, as typed. */
  readonly position: string;
  /** ISO 8601 time of the capture. */
  readonly takenAt: string;
}

/** Names Windows keeps for devices, whatever follows their first full stop. */
const deviceName = /^(?:con|prn|aux|nul|com\d|lpt\d)(?=\.|\s|$)/i;
/** Every system takes names of 255 bytes; this leaves room for a browser's " (1)". */
const mostLetters = 60;

/**
 * Name of a file that every system can hold: layout, speaker, position, day and minute, then what it
 * holds. Letters of any script, digits, and . - _ ( ) are kept, all else becomes a space; it begins
 * with a letter or digit and no part is longer than 60 characters. `extension` without its full
 * stop. Common practice.
 */
export function fileName(facts: FileFacts, what: string, extension: string): string {
  const { layout, speaker, position, takenAt } = facts;
  const minute = takenAt.slice(0, 16).replace('T', ' ').replace(':', '-');
  const parts = [layout, speaker ?? '', position, minute, what];
  const name = parts
    .map(plainPart)
    .filter((part) => part !== '')
    .join(' ');
  return `${name.replace(deviceName, '$&_')}.${extension}`;
}

function plainPart(text: string): string {
  const plain = text
    .normalize('NFC')
    .replaceAll(/[^\p{L}\p{M}\p{N}._()-]+/gu, ' ')
    .replace(/^[^\p{L}\p{N}(]+/u, '');
  const short = [...plain].slice(0, mostLetters).join('');
  return short.replace(/[\s.]+$/, '');
}
