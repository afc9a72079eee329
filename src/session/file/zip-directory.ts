import { msg, str } from '@lit/localize';
import type { Trouble } from '../../trouble';
import { mostEntries, mostFileBytes } from './file-limits';
import { refuseFile } from './file-trouble';

/** One file in a ZIP, as its directory tells. */
export interface ZipEntry {
  readonly name: string;
  /** 0: stored as it is; 8: deflated. */
  readonly method: number;
  readonly crc: number;
  readonly packedBytes: number;
  readonly unpackedBytes: number;
  /** Where its local header stands. */
  readonly headerAt: number;
}

const endBytes = 22;
const longestComment = 65535;

/**
 * Reads the directory of a ZIP without unpacking anything. Refuses what a session file never has:
 * several disks, 64-bit sizes, encryption, other packing, too many entries, and a directory that does
 * not stand right before the end. Source: PKWARE APPNOTE 6.3, from memory.
 */
export async function readZipDirectory(file: Blob): Promise<ZipEntry[] | Trouble> {
  if (file.size < endBytes) return refuseFile(msg('it is empty or cut off'));
  if (file.size > mostFileBytes) return refuseFile(msg('it is larger than 4 GiB'));
  const tailAt = Math.max(0, file.size - endBytes - longestComment);
  const tail = await viewOf(file, tailAt, file.size);
  const endAt = findEnd(tail);
  if (endAt === null) return refuseFile(msg('it is no ZIP file, or its end is cut off'));
  const count = tail.getUint16(endAt + 10, true);
  const bytes = tail.getUint32(endAt + 12, true);
  const start = tail.getUint32(endAt + 16, true);
  const disks = [4, 6].some((at) => tail.getUint16(endAt + at, true) !== 0);
  if (disks || tail.getUint16(endAt + 8, true) !== count) {
    return refuseFile(msg('it is one part of several'));
  }
  if (count === 0xffff || bytes === 0xffffffff || start === 0xffffffff || isZip64(tail, endAt)) {
    return refuseFile(msg('it is a ZIP of the 64-bit kind'));
  }
  if (count > mostEntries) return refuseFile(msg(str`it claims to hold ${count} files`));
  if (start + bytes !== tailAt + endAt)
    return refuseFile(msg('its directory is not where it should be'));
  return readEntries(await viewOf(file, start, start + bytes), count);
}

/** A piece of a file to read numbers from. */
export async function viewOf(file: Blob, start: number, end: number): Promise<DataView> {
  return new DataView(await file.slice(start, end).arrayBuffer());
}

/** The end record is the last thing of the file but for its comment. */
function findEnd(tail: DataView): number | null {
  for (let at = tail.byteLength - endBytes; at >= 0; at--) {
    const isEnd = tail.getUint32(at, true) === 0x06054b50;
    if (isEnd && at + endBytes + tail.getUint16(at + 20, true) === tail.byteLength) return at;
  }
  return null;
}

function isZip64(tail: DataView, endAt: number): boolean {
  return endAt >= 20 && tail.getUint32(endAt - 20, true) === 0x07064b50;
}

function readEntries(view: DataView, count: number): ZipEntry[] | Trouble {
  const entries: ZipEntry[] = [];
  let at = 0;
  for (let index = 0; index < count; index++) {
    if (at + 46 > view.byteLength || view.getUint32(at, true) !== 0x02014b50) {
      return refuseFile(msg(str`its directory is damaged at entry ${index + 1}`));
    }
    const lengths = [28, 30, 32].map((field) => view.getUint16(at + field, true));
    const [nameBytes = 0, extraBytes = 0, commentBytes = 0] = lengths;
    const end = at + 46 + nameBytes + extraBytes + commentBytes;
    if (end > view.byteLength)
      return refuseFile(msg(str`its directory is damaged at entry ${index + 1}`));
    const refused = refuseKind(view, at);
    if (refused) return refuseFile(refused);
    entries.push({
      name: nameAt(view, at + 46, nameBytes),
      method: view.getUint16(at + 10, true),
      crc: view.getUint32(at + 16, true),
      packedBytes: view.getUint32(at + 20, true),
      unpackedBytes: view.getUint32(at + 24, true),
      headerAt: view.getUint32(at + 42, true),
    });
    at = end;
  }
  return at === view.byteLength
    ? entries
    : refuseFile(msg('its directory holds more than it says'));
}

/** Flags that change nothing here: speed of packing, sizes behind the data, names in UTF-8. */
const harmless = 0b0000_1000_0000_1110;

function refuseKind(view: DataView, at: number): string | null {
  const flags = view.getUint16(at + 8, true);
  const method = view.getUint16(at + 10, true);
  const sizes = [20, 24, 42].map((field) => view.getUint32(at + field, true));
  if ((flags & 0b0010_0000_0100_0001) !== 0) return msg('it is encrypted');
  if ((flags & ~harmless) !== 0) return msg('it is packed in a way that is not known here');
  if (method !== 0 && method !== 8)
    return msg(str`it is packed in a way that is not known here (${method})`);
  if (sizes.includes(0xffffffff)) return msg('it is a ZIP of the 64-bit kind');
  if (view.getUint16(at + 34, true) !== 0) return msg('it is one part of several');
  return null;
}

/** Names of a session file are ASCII; anything else shows as a question mark, and is refused later. */
function nameAt(view: DataView, at: number, bytes: number): string {
  let name = '';
  for (let n = 0; n < bytes; n++) {
    const code = view.getUint8(at + n);
    name += code >= 32 && code < 127 ? String.fromCharCode(code) : '?';
  }
  return name;
}
