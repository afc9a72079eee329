/** Hand-made RIFF bytes for tests, independent of the writer. */
export function riff(
  chunks: readonly (readonly [string, Uint8Array, { claims?: number; unpadded?: boolean }?])[],
  kind = 'RIFF',
): Uint8Array {
  const bytes: number[] = [...ascii(kind), 0, 0, 0, 0, ...ascii('WAVE')];
  for (const [id, body, options] of chunks) {
    bytes.push(...ascii(id), ...u32(options?.claims ?? body.length), ...body);
    if (body.length % 2 === 1 && !options?.unpadded) bytes.push(0);
  }
  bytes.splice(4, 4, ...u32(kind === 'RIFF' ? bytes.length - 8 : 0xffffffff));
  return Uint8Array.from(bytes);
}

/** A plain fmt chunk; `patch` overrides its fields. */
export function fmt(
  patch: Partial<{
    tag: number;
    channels: number;
    rate: number;
    frameBytes: number;
    bits: number;
  }> = {},
): Uint8Array {
  const channels = patch.channels ?? 1;
  const rate = patch.rate ?? 48000;
  const bits = patch.bits ?? 16;
  const frameBytes = patch.frameBytes ?? (channels * bits) / 8;
  const head = [...u16(patch.tag ?? 1), ...u16(channels), ...u32(rate), ...u32(rate * frameBytes)];
  return Uint8Array.from([...head, ...u16(frameBytes), ...u16(bits)]);
}

/** The 24 bytes that make a fmt chunk extensible; goes with tag 0xFFFE. */
export function extension(code: number, validBits: number, mask: number): Uint8Array {
  const guid = [0, 0, 0, 0, 0x10, 0, 0x80, 0, 0, 0xaa, 0, 0x38, 0x9b, 0x71];
  return Uint8Array.from([...u16(22), ...u16(validBits), ...u32(mask), ...u16(code), ...guid]);
}

/** Little-endian 16-bit samples. */
export function int16(...values: number[]): Uint8Array {
  return Uint8Array.from(values.flatMap((value) => u16(value & 0xffff)));
}

export function u16(value: number): number[] {
  return [value & 255, (value >>> 8) & 255];
}

export function u32(value: number): number[] {
  return [...u16(value & 0xffff), ...u16(Math.floor(value / 65536))];
}

export function ascii(text: string): number[] {
  return [...text].map((letter) => letter.charCodeAt(0));
}

export function joined(a: Uint8Array, b: Uint8Array): Uint8Array {
  return Uint8Array.from([...a, ...b]);
}
