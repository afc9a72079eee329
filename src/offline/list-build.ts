import { createHash } from 'node:crypto';
import type { KeptFile } from './kept-build';

/** A file as the build wrote it; `path` from the folder it wrote to, with forward slashes. */
export interface BuiltFile {
  readonly path: string;
  readonly bytes: Uint8Array;
}

/** The service worker itself is kept by the browser. */
export const workerPath = 'service-worker.js';

/** The picture of the README; fonts in the older format, which no browser with worklets asks for. */
const leftOut = /^leadline\.png$|\.woff$|\.map$/;

/** The files to keep of a build, in order of their paths, each with the hash of its bytes. */
export function listBuild(files: readonly BuiltFile[]): KeptFile[] {
  return inOrder(files)
    .filter(({ path }) => path !== workerPath && !leftOut.test(path))
    .map(({ path, bytes }) => ({
      path,
      sha256: createHash('sha256').update(bytes).digest('base64'),
    }));
}

/**
 * Names a build by the first eight hex digits of SHA-256 over the paths, lengths and bytes of all
 * its files, in whatever order they come.
 */
export function nameBuild(files: readonly BuiltFile[]): string {
  const hash = createHash('sha256');
  for (const { path, bytes } of inOrder(files)) {
    hash.update(`${path}\n${bytes.length}\n`).update(bytes);
  }
  return hash.digest('hex').slice(0, 8);
}

/** By code units, so that no machine's language changes the order. */
function inOrder(files: readonly BuiltFile[]): BuiltFile[] {
  return [...files].sort((one, other) =>
    one.path < other.path ? -1 : one.path > other.path ? 1 : 0,
  );
}
