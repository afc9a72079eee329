import { mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import type { Plugin } from 'vite';
import type { KeptBuild } from './src/offline/kept-build.ts';
import { listBuild, nameBuild, workerPath, type BuiltFile } from './src/offline/list-build.ts';
import { firstChunks, firstGroup, firstModules } from './vite-first-script.ts';

const here = (file: string): string => fileURLToPath(new URL(file, import.meta.url));
const workerName = path.parse(workerPath).name;

/**
 * Builds the service worker beside the app, with the list of what the build wrote, and writes the
 * version into the page. Says how large the script is that the page begins with, and writes what
 * it is made of into `.vite/first-script.json`, which is not kept.
 */
export function keepOffline(): Plugin {
  let folder = '';
  let base = '';
  return {
    name: 'leadline-offline',
    apply: 'build',
    config: () => ({
      build: {
        rolldownOptions: {
          input: { index: here('index.html'), [workerName]: here('src/offline/service-worker.ts') },
          output: {
            // The name of the worker is the same for ever: browsers look there for a newer one.
            entryFileNames: ({ name }) =>
              name === workerName ? workerPath : 'assets/[name]-[hash].js',
            codeSplitting: { groups: [firstGroup] },
          },
        },
      },
    }),
    configResolved({ root, build }) {
      folder = path.resolve(root, build.outDir);
      base = root;
    },
    writeBundle: {
      order: 'post',
      sequential: true,
      handler(_options, bundle) {
        const worker = bundle[workerPath];
        if (worker?.type !== 'chunk' || worker.imports.length + worker.exports.length > 0) {
          this.error(`${workerPath} must stand alone: it is no module.`);
        }
        stampBuild(folder);
        const first = firstChunks(bundle);
        const bytes = first.reduce((sum, { code }) => sum + gzipSync(code).length, 0);
        this.info(`the page begins with ${Math.round(bytes / 1000)} kB of script, compressed`);
        mkdirSync(path.join(folder, '.vite'), { recursive: true });
        writeFileSync(
          path.join(folder, '.vite/first-script.json'),
          JSON.stringify(firstModules(first, base)),
        );
      },
    },
  };
}

/** Names the build in its page, lists its files in its service worker. */
function stampBuild(folder: string): void {
  const build = nameBuild(readFolder(folder));
  const { version } = JSON.parse(readFileSync(here('package.json'), 'utf8')) as { version: string };
  replaceIn(
    path.join(folder, 'index.html'),
    'name="version" content="development"',
    `name="version" content="${version}+${build}"`,
  );
  const kept: KeptBuild = { build, files: listBuild(readFolder(folder)) };
  replaceIn(path.join(folder, workerPath), '__KEPT_BUILD__', JSON.stringify(kept));
}

function readFolder(folder: string): BuiltFile[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => {
      const file = path.join(entry.parentPath, entry.name);
      const name = path.relative(folder, file).split(path.sep).join('/');
      return { path: name, bytes: readFileSync(file) };
    });
}

function replaceIn(file: string, what: string, by: string): void {
  const [before, after, ...more] = readFileSync(file, 'utf8').split(what);
  if (before === undefined || after === undefined || more.length > 0) {
    throw new RangeError(`${file} must hold ${what} once.`);
  }
  writeFileSync(file, before + by + after);
}
