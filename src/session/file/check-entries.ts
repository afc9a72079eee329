import { msg, str } from '@lit/localize';
import type { Trouble } from '../../trouble';
import { mostSoundBytes, mostTextBytes, mostUnpackedBytes } from './file-limits';
import { refuseFile } from './file-trouble';
import type { ZipEntry } from './zip-directory';

/** The entry that says what all others are. */
export const textName = 'session.json';
/** Recordings are numbered from 1. */
const soundName = /^captures\/[1-9]\d{0,4}\.wav$/;

/** The name of the recording of a number, from 1. */
export function soundEntryName(number: number): string {
  return `captures/${number}.wav`;
}

/**
 * Holds names and sizes of all entries against what a session file may hold, before any is
 * unpacked; null when nothing is wrong.
 */
export function checkEntries(entries: readonly ZipEntry[], fileBytes: number): Trouble | null {
  const names = new Set<string>();
  let unpacked = 0;
  for (const entry of entries) {
    const { name, method, packedBytes, unpackedBytes } = entry;
    const finding = refuseName(name, names) ?? refuseSize(entry);
    if (finding) return refuseFile(finding);
    if (method === 0 && packedBytes !== unpackedBytes) {
      return refuseFile(msg(str`the sizes of ${name} do not fit together`));
    }
    names.add(name);
    unpacked += unpackedBytes;
  }
  if (!names.has(textName)) return refuseFile(msg(str`it has no ${textName}`));
  if (unpacked > mostUnpackedBytes(fileBytes)) {
    return refuseFile(
      msg(str`it would unpack to ${megabytes(unpacked)}, more than such a file can hold`),
    );
  }
  return null;
}

function refuseName(name: string, before: ReadonlySet<string>): string | null {
  if (before.has(name)) return msg(str`it holds ${name} twice`);
  if (name === textName || soundName.test(name)) return null;
  const shown = name.length > 60 ? `${name.slice(0, 60)}…` : name;
  const isPath = /(^|[/\\])\.\.([/\\]|$)|^[/\\]|^[a-z]:|\\/i.test(name);
  return isPath
    ? msg(str`it holds “${shown}”, a path that leads out of the file`)
    : msg(str`it holds “${shown}”, which is no part of a session`);
}

function refuseSize({ name, unpackedBytes }: ZipEntry): string | null {
  const most = name === textName ? mostTextBytes : mostSoundBytes;
  return unpackedBytes > most
    ? msg(str`${name} claims to be ${megabytes(unpackedBytes)} large`)
    : null;
}

function megabytes(bytes: number): string {
  return msg(str`${Math.round(bytes / 2 ** 20)} MiB`);
}
