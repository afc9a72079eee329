import { createHash } from 'node:crypto';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const dist = fileURLToPath(new URL('../../dist', import.meta.url));

/** A copy of the built app that can be changed under its server. */
export interface BuildCopy {
  readonly folder: string;
  /** The name of the build in it. */
  readonly build: string;
  /** Puts another build in its place, of the same code. */
  rename(build: string): void;
  /** Puts a page in it that is not the one its service worker lists. */
  spoilPage(): void;
  remove(): void;
}

export function copyBuild(): BuildCopy {
  const folder = mkdtempSync(path.join(tmpdir(), 'leadline-build-'));
  cpSync(dist, folder, { recursive: true });
  const page = path.join(folder, 'index.html');
  const worker = path.join(folder, 'service-worker.js');
  const original = readFileSync(page, 'utf8');
  const build = /name="version" content="[^"+]+\+([0-9a-f]{8})"/.exec(original)?.[1];
  if (build === undefined) throw new Error('The built page does not say which build it is.');
  return {
    folder,
    build,
    rename(name) {
      const renamed = original.replaceAll(build, name);
      const script = readFileSync(worker, 'utf8')
        .replaceAll(build, name)
        .replaceAll(hashOf(original), hashOf(renamed));
      writeFileSync(page, renamed);
      writeFileSync(worker, script);
    },
    spoilPage: () => writeFileSync(page, `${readFileSync(page, 'utf8')}<!-- not yet -->`),
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}

function hashOf(text: string): string {
  return createHash('sha256').update(text).digest('base64');
}
