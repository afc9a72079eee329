import { readFile, stat } from 'node:fs/promises';
import { resolve } from 'node:path';
import { trouble, type Trouble } from '../trouble';
import type { CommandIo } from './command';

/** A file that was read whole. */
export interface InputFile {
  readonly bytes: Uint8Array;
  /** ISO 8601 time it was last written. */
  readonly writtenAt: string;
}

/** Reads a file; a Trouble says which file could not be read and why. */
export async function readInputFile(path: string, io: CommandIo): Promise<InputFile | Trouble> {
  const whole = resolve(io.directory, path);
  try {
    const { mtime } = await stat(whole);
    const bytes = await readFile(whole, { signal: io.signal });
    return { bytes, writtenAt: mtime.toISOString() };
  } catch (error) {
    if (io.signal.aborted) return trouble('stopped', `Reading ${path} was stopped.`);
    return trouble('bad-file', `${path} cannot be read: ${fileProblem(error)}.`);
  }
}

/** The text of a file's bytes. */
export function textOf(file: InputFile): string {
  return new TextDecoder().decode(file.bytes);
}

/** The trouble with the file's name in front of its sentence. */
export function inFile(path: string, { trouble: kind, sentence }: Trouble): Trouble {
  return trouble(kind, `${path}: ${sentence}`);
}

/** Why the file system refused, in plain words. */
export function fileProblem(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return reasons.get(code) ?? (error instanceof Error ? error.message : String(error));
}

const reasons = new Map([
  ['ENOENT', 'there is no such file'],
  ['EISDIR', 'it is a directory'],
  ['ENOTDIR', 'a part of its path is a file, not a directory'],
  ['EEXIST', 'a file stands where the directory should be'],
  ['EACCES', 'permission is refused'],
  ['EPERM', 'permission is refused'],
  ['EROFS', 'the disk is read-only'],
  ['ENOSPC', 'the disk is full'],
  ['ERR_FS_FILE_TOO_LARGE', 'it is larger than 2 GiB'],
]);
