/**
 * Text of a file in UTF-8 or UTF-16 of either byte order, with or without a byte order mark; null
 * when the bytes are no text. Bytes that are no UTF-8 become replacement characters.
 */
export function decodeText(bytes: Uint8Array): string | null {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return decodeAs('utf-16le', bytes);
  if (first === 0xfe && second === 0xff) return decodeAs('utf-16be', bytes);
  const zeros = [0, 0];
  for (const [n, byte] of bytes.entries()) if (byte === 0) zeros[n % 2] = (zeros[n % 2] ?? 0) + 1;
  const [even = 0, odd = 0] = zeros;
  // Latin text in UTF-16 has a zero in nearly every other byte.
  const most = bytes.length / 4;
  if (odd > most && even === 0) return decodeAs('utf-16le', bytes);
  if (even > most && odd === 0) return decodeAs('utf-16be', bytes);
  return decodeAs('utf-8', bytes);
}

/** Null when there are control characters that no text has. */
function decodeAs(encoding: 'utf-8' | 'utf-16le' | 'utf-16be', bytes: Uint8Array): string | null {
  const text = new TextDecoder(encoding).decode(bytes);
  for (let n = 0; n < text.length; n++) {
    const code = text.charCodeAt(n);
    if (code < 32 && !(code >= 9 && code <= 13) && code !== 26) return null;
  }
  return text;
}
