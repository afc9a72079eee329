/** Most bytes of a session file: what its 32-bit offsets can reach. */
export const mostFileBytes = 2 ** 32 - 1;

/** Most entries of a session file. */
export const mostEntries = 4000;

/** Most bytes that session.json may unpack to. */
export const mostTextBytes = 2 ** 28;

/** Most bytes that one recording may unpack to: 46 minutes at 48 kHz. */
export const mostSoundBytes = 2 ** 29;

/** Most bytes a whole file may unpack to, at its size: sound hardly packs, text about tenfold. */
export function mostUnpackedBytes(fileBytes: number): number {
  return Math.min(mostFileBytes, 2 ** 26 + 50 * fileBytes);
}
