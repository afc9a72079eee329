import { mkdir, open, rename, rm } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import type { TakeFile } from '../rig/recording-stimulus';
import { trouble, type Trouble } from '../trouble';
import type { CommandIo } from './command';
import { fileProblem } from './input-files';

/**
 * Writes files that belong together into a directory, which is made when missing. All are written
 * under other names first and renamed when all are complete, so that a failure or a stop leaves
 * what was there before. Gives the paths, in order.
 */
export async function writeFiles(
  directory: string,
  files: readonly TakeFile[],
  io: CommandIo,
): Promise<string[] | Trouble> {
  const whole = resolve(io.directory, directory);
  const parts: string[] = [];
  try {
    await mkdir(whole, { recursive: true });
    for (const file of files) {
      const part = join(whole, `.${file.name}.${process.pid}.part`);
      parts.push(part);
      await writePieces(part, file.pieces, io.signal);
    }
    for (const [index, file] of files.entries()) {
      await rename(parts[index] ?? '', join(whole, file.name));
    }
    return files.map((file) => join(directory, file.name));
  } catch (error) {
    for (const part of parts) await rm(part, { force: true });
    if (io.signal.aborted) return trouble('stopped', 'Writing was stopped; no file was changed.');
    const sentence = `The take cannot be written into ${directory}: ${fileProblem(error)}.`;
    return trouble('storage', `${sentence} Choose another directory.`);
  }
}

async function writePieces(
  path: string,
  pieces: Iterable<Uint8Array>,
  signal: AbortSignal,
): Promise<void> {
  const file = await open(path, 'w');
  try {
    for (const piece of pieces) {
      signal.throwIfAborted();
      await file.writeFile(piece);
    }
    await file.sync();
  } finally {
    await file.close();
  }
}
