const table = Uint32Array.from({ length: 256 }, (_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? 0xedb88320 ^ (value >>> 1) : value >>> 1;
  return value;
});

/**
 * CRC-32 of ISO 3309 (reflected polynomial 0xedb88320), as ZIP files carry it, of bytes that follow
 * those whose CRC is `before`; 0 at the beginning.
 */
export function crc32(bytes: Uint8Array, before = 0): number {
  let value = ~before;
  for (const byte of bytes) value = (table[(value ^ byte) & 255] ?? 0) ^ (value >>> 8);
  return ~value >>> 0;
}
