import { crc32, deflateRawSync } from 'node:zlib';

/** One entry of a ZIP as a test wants it, truthful unless told otherwise. */
export interface EntrySpec {
  readonly name: string;
  readonly data: Uint8Array;
  readonly stored?: boolean;
  readonly flags?: number;
  readonly method?: number;
  readonly crc?: number;
  /** Unpacked size that both headers claim. */
  readonly claims?: number;
  /** Name in the local header alone. */
  readonly localName?: string;
}

/** What the end record says instead of the truth. */
export interface EndSpec {
  readonly count?: number;
  readonly start?: number;
  readonly disk?: number;
  readonly comment?: string;
  /** Puts the locator of a 64-bit end record before the end. */
  readonly zip64?: boolean;
}

/** Writes a ZIP byte by byte, after PKWARE's APPNOTE, with zlib's own deflate and CRC. */
export function zipBytes(
  entries: readonly EntrySpec[],
  end: EndSpec = {},
): Uint8Array<ArrayBuffer> {
  const parts: Uint8Array[] = [];
  const directory: Uint8Array[] = [];
  let at = 0;
  const put = (bytes: Uint8Array): void => {
    parts.push(bytes);
    at += bytes.length;
  };
  for (const entry of entries) {
    const { name, data, stored = false, flags = 0, localName = name } = entry;
    const packed = stored ? data : new Uint8Array(deflateRawSync(data));
    const common = [
      [2, flags],
      [2, entry.method ?? (stored ? 0 : 8)],
      [2, 0],
      [2, 0x21],
      [4, entry.crc ?? crc32(data)],
      [4, packed.length],
      [4, entry.claims ?? data.length],
      [2, name.length],
      [2, 0],
    ] as const;
    directory.push(
      join([
        numbers([
          [4, 0x02014b50],
          [2, 20],
          [2, 20],
          ...common,
          [2, 0],
          [2, 0],
          [2, 0],
          [4, 0],
          [4, at],
        ]),
        text(name),
      ]),
    );
    put(join([numbers([[4, 0x04034b50], [2, 20], ...common]), text(localName), packed]));
  }
  const table = join(directory);
  const start = end.start ?? at;
  const count = end.count ?? entries.length;
  put(table);
  if (end.zip64)
    put(
      numbers([
        [4, 0x07064b50],
        [4, 0],
        [4, at],
        [4, 0],
        [4, 1],
      ]),
    );
  const comment = text(end.comment ?? '');
  const disk = end.disk ?? 0;
  const record = [
    [4, 0x06054b50],
    [2, disk],
    [2, disk],
    [2, count],
    [2, count],
  ] as const;
  put(join([numbers([...record, [4, table.length], [4, start], [2, comment.length]]), comment]));
  return join(parts);
}

function text(value: string): Uint8Array {
  return Uint8Array.from(value, (letter) => letter.charCodeAt(0));
}

/** Little-endian numbers, each with its bytes. */
function numbers(values: readonly (readonly [number, number])[]): Uint8Array {
  const bytes = values.flatMap(([width, value]) =>
    Array.from({ length: width }, (_, index) => Math.floor(value / 256 ** index) % 256),
  );
  return Uint8Array.from(bytes);
}

function join(parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const joined = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    joined.set(part, at);
    at += part.length;
  }
  return joined;
}
