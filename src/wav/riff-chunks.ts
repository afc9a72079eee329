/** One chunk of a RIFF file. Its body begins at `start`. */
export interface RiffChunk {
  readonly id: string;
  readonly start: number;
  /** Bytes it claims to hold. */
  readonly claimed: number;
  /** Bytes of it that are there. */
  readonly size: number;
  /** True when it was written before its length was known and so runs to the end of the file. */
  readonly streamed: boolean;
}

const common = ['fmt ', 'fact', 'data', 'LIST'];

/** Four characters of a file as text; what is not printable ASCII shows as a full stop. */
export function tagAt(view: DataView, at: number): string {
  let text = '';
  for (let i = at; i < Math.min(at + 4, view.byteLength); i++) {
    const code = view.getUint8(i);
    text += code >= 32 && code < 127 ? String.fromCharCode(code) : '.';
  }
  return text;
}

/**
 * Walks the chunks of a RIFF, RF64 or BW64 file from byte 12 to its end. Knows the 64-bit length of
 * ds64 and the lengths that streaming recorders leave behind; accepts odd chunks whose padding byte
 * was forgotten. Never throws. Sources: RIFF 1991, EBU Tech 3306, ITU-R BS.2088, from memory.
 */
export function* riffChunks(view: DataView): Generator<RiffChunk> {
  const end = view.byteLength;
  let dataBytes64: number | null = null;
  let at = 12;
  while (at + 8 <= end) {
    const id = tagAt(view, at);
    const start = at + 8;
    const said = view.getUint32(at + 4, true);
    if (id === 'ds64' && start + 16 <= end) {
      dataBytes64 = Number(view.getBigUint64(start + 8, true));
    }
    const claimed = id === 'data' && said === 0xffffffff && dataBytes64 ? dataBytes64 : said;
    const streamed = id === 'data' && wasStreamed(view, start, claimed);
    const size = streamed ? end - start : Math.min(claimed, end - start);
    yield { id, start, claimed, size, streamed };
    at = start + size;
    if (size % 2 === 1 && !common.includes(tagAt(view, at))) at++;
  }
}

/** Recorders that cannot go back leave 0, all ones, or a length near 2 GiB. */
function wasStreamed(view: DataView, start: number, claimed: number): boolean {
  if (claimed === 0) return !(start + 8 <= view.byteLength && common.includes(tagAt(view, start)));
  const unknown = claimed === 0xffffffff || (claimed >= 0x7ffff000 && claimed <= 0x80000000);
  return unknown && start + claimed > view.byteLength;
}
