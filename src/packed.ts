/** Plain data as bytes; it does not change, and goes to workers again and again. */
const packed = new WeakMap<object, Uint8Array>();

/** Plain data as bytes, which cost the page next to nothing to copy; the same data is packed once. */
export function pack(part: object): Uint8Array {
  const known = packed.get(part);
  if (known) return known;
  const bytes = new TextEncoder().encode(JSON.stringify(part));
  packed.set(part, bytes);
  return bytes;
}

/**
 * Packs what is not packed yet, and waits for `pause` after each: packing all of it at once would
 * hold up the screen.
 */
export async function packCalmly(
  parts: readonly object[],
  pause: () => Promise<void>,
): Promise<void> {
  for (const part of parts) {
    if (packed.has(part)) continue;
    pack(part);
    await pause();
  }
}

/** What was packed: finite numbers come back digit for digit. */
export function unpack<Part extends object>(bytes: Uint8Array): Part {
  return JSON.parse(new TextDecoder().decode(bytes)) as Part;
}
