import type { Rolldown } from 'vite';

/** What makes up the service worker, which has to stand alone. */
const ofWorker = /\/src\/offline\/(?:service-worker|keep-build|kept-path)\.ts$/;

/** What the page begins with is one file, instead of one for every set of late parts that share of it. */
export const firstGroup = {
  name: 'first',
  tags: ['$initial' as const],
  test: (id: string) => !ofWorker.test(id),
};

/** A module of the script the page begins with. */
export interface FirstModule {
  /** Its path from the root of the project. */
  readonly module: string;
  /** As it stands in the script, before compression. */
  readonly bytes: number;
}

/** Chunks of a build that the page's own script imports at once, itself first. */
export function firstChunks(bundle: Rolldown.OutputBundle): Rolldown.OutputChunk[] {
  const first = new Map<string, Rolldown.OutputChunk>();
  const add = (name: string): void => {
    const chunk = bundle[name];
    if (chunk?.type !== 'chunk' || first.has(name)) return;
    first.set(name, chunk);
    chunk.imports.forEach(add);
  };
  for (const chunk of Object.values(bundle)) {
    if (chunk.type === 'chunk' && chunk.isEntry && chunk.name === 'index') add(chunk.fileName);
  }
  return [...first.values()];
}

/** The modules in these chunks, the largest first. */
export function firstModules(chunks: readonly Rolldown.OutputChunk[], root: string): FirstModule[] {
  return chunks
    .flatMap(({ modules }) => Object.entries(modules))
    .map(([id, { renderedLength }]) => ({
      module: id.replace(`${root}/`, ''),
      bytes: renderedLength,
    }))
    .sort((one, other) => other.bytes - one.bytes);
}
