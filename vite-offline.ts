import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import type { Plugin, Rolldown } from 'vite';
import type { KeptBuild } from './src/offline/kept-build.ts';
import { listBuild, nameBuild, workerPath, type BuiltFile } from './src/offline/list-build.ts';

const here = (file: string): string => fileURLToPath(new URL(file, import.meta.url));
const workerName = path.parse(workerPath).name;

/**
 * Builds the service worker beside the app, with the list of what the build wrote, and writes the
 * version into the page. Says how large the script is that the page begins with.
 */
export function keepOffline(): Plugin {
  let folder = '';
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
          },
        },
      },
    }),
    configResolved({ root, build }) {
      folder = path.resolve(root, build.outDir);
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
        this.info(`the page begins with ${initialKilobytes(bundle)} kB of script, compressed`);
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

/** The page's own script and all it imports at once, by gzip, in units of 1000 bytes. */
function initialKilobytes(bundle: Rolldown.OutputBundle): number {
  const first = new Set<string>();
  const add = (name: string): void => {
    const chunk = bundle[name];
    if (chunk?.type !== 'chunk' || first.has(name)) return;
    first.add(name);
    chunk.imports.forEach(add);
  };
  for (const chunk of Object.values(bundle)) {
    if (chunk.type === 'chunk' && chunk.isEntry && chunk.name === 'index') add(chunk.fileName);
  }
  const bytes = [...first].map((name) => {
    const chunk = bundle[name];
    return chunk?.type === 'chunk' ? gzipSync(chunk.code).length : 0;
  });
  return Math.round(bytes.reduce((sum, one) => sum + one, 0) / 1000);
}
