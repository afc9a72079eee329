import { msg, str } from '@lit/localize';
import { Inflate } from 'fflate';
import { isTrouble, type Trouble } from '../../trouble';
import { crc32 } from './crc32';
import { breathe } from '../../breathe';
import { fileStopped, refuseFile } from './file-trouble';
import { viewOf, type ZipEntry } from './zip-directory';

/** Packed bytes that are unpacked at once: at most a thousandfold comes out of them. */
const stepBytes = 2 ** 14;
/** Bytes, packed or unpacked, after which the screen may draw. */
const breathBytes = 2 ** 20;

/**
 * The bytes of one entry. Never gives out more than the directory promised, and nothing whose
 * checksum does not fit. The screen is never kept waiting long; an abort ends it.
 */
export async function unpackEntry(
  file: Blob,
  entry: ZipEntry,
  signal: AbortSignal,
): Promise<Uint8Array<ArrayBuffer> | Trouble> {
  const start = await findData(file, entry);
  if (isTrouble(start)) return start;
  const { name, method, packedBytes, unpackedBytes, crc } = entry;
  const bytes = new Uint8Array(unpackedBytes);
  let at = 0;
  let overflowed = false;
  const take = (piece: Uint8Array): void => {
    if (piece.length > bytes.length - at) overflowed = true;
    else bytes.set(piece, at);
    at += overflowed ? 0 : piece.length;
  };
  const inflate = method === 8 ? new Inflate(take) : null;
  for (let read = 0; read < packedBytes; read += breathBytes) {
    await breathe();
    if (signal.aborted) return fileStopped();
    const end = Math.min(packedBytes, read + breathBytes);
    const view = await viewOf(file, start + read, start + end);
    const packed = new Uint8Array(view.buffer);
    if (packed.length !== end - read) return refuseFile(msg(str`${name} is cut off`));
    if (inflate) await inflateInSteps(inflate, packed, end === packedBytes, () => overflowed);
    else take(packed);
    if (overflowed) return refuseFile(msg(str`${name} unpacks to more than it claims`));
  }
  if (at !== unpackedBytes) return refuseFile(msg(str`${name} unpacks to less than it claims`));
  return (await crcInSteps(bytes)) === crc
    ? bytes
    : refuseFile(
        msg(str`${name} is damaged: its checksum does not fit`),
        msg('Copy the file again.'),
      );
}

/** Where the entry's data begin: its local header must say the same as the directory. */
async function findData(file: Blob, entry: ZipEntry): Promise<number | Trouble> {
  const { name, method, headerAt, packedBytes } = entry;
  const damaged = refuseFile(msg(str`${name} is not where the directory says`));
  const header = await viewOf(file, headerAt, headerAt + 30 + name.length);
  if (header.byteLength < 30 + name.length || header.getUint32(0, true) !== 0x04034b50) {
    return damaged;
  }
  const same = [...name].every((letter, n) => header.getUint8(30 + n) === letter.charCodeAt(0));
  const nameBytes = header.getUint16(26, true);
  if (!same || nameBytes !== name.length || header.getUint16(8, true) !== method) return damaged;
  const start = headerAt + 30 + nameBytes + header.getUint16(28, true);
  return start + packedBytes > file.size ? refuseFile(msg(str`${name} is cut off`)) : start;
}

async function inflateInSteps(
  inflate: Inflate,
  packed: Uint8Array,
  isLast: boolean,
  isOver: () => boolean,
): Promise<void> {
  let given = 0;
  for (let at = 0; at < packed.length && !isOver(); at += stepBytes) {
    const end = Math.min(packed.length, at + stepBytes);
    inflate.push(packed.slice(at, end), isLast && end === packed.length);
    given += end - at;
    if (given % (8 * stepBytes) === 0) await breathe();
  }
}

async function crcInSteps(bytes: Uint8Array): Promise<number> {
  let crc = 0;
  for (let at = 0; at < bytes.length; at += 8 * breathBytes) {
    if (at > 0) await breathe();
    crc = crc32(bytes.subarray(at, at + 8 * breathBytes), crc);
  }
  return crc;
}
