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

/** Names that Windows keeps for devices. */
const deviceName = /^(?:con|prn|aux|nul|com\d|lpt\d)(?=[.\s]|$)/i;
/** No part of a name is longer; systems take 255 bytes in all. */
const mostBytes = 60;

/**
 * Name of a file that every system can hold: layout, speaker, position, day and minute, then what it
 * holds. Letters of any script, digits and . - _ ( ) are kept, all else becomes a space, and no part
 * begins with a sign. `extension` without its full stop. Common practice.
 */
export function fileName(facts: FileFacts, what: string, extension: string): string {
  const { layout, speaker, position, takenAt } = facts;
  const minute = takenAt.slice(0, 16).replace('T', ' ').replace(':', '-');
  const parts = [layout, speaker ?? '', position, minute, what].map(plainPart);
  const name = parts.filter((part) => part !== '').join(' ');
  return `${name.replace(deviceName, '$&_') || 'curve'}.${extension}`;
}

function plainPart(text: string): string {
  const plain = text
    .normalize('NFC')
    .replaceAll(/[^\p{L}\p{M}\p{N}._()-]+/gu, ' ')
    .replace(/^[^\p{L}\p{N}(]+/u, '');
  return cutTo(plain, mostBytes).replace(/[\s.]+$/, '');
}

/** The beginning of a text that takes at most so many bytes in UTF-8. */
function cutTo(text: string, most: number): string {
  const encoder = new TextEncoder();
  let kept = '';
  let bytes = 0;
  for (const letter of text) {
    bytes += encoder.encode(letter).length;
    if (bytes > most) break;
    kept += letter;
  }
  return kept;
}
