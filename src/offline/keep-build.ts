import type { KeptBuild } from './kept-build';

const prefix = 'leadline-build-';

/**
 * Fetches every file of a build and keeps it in a cache of its own, all or none: a file whose bytes
 * are not those that were built, as while a server changes over, rejects. `scope` is the address
 * of the folder the app is served from.
 */
export async function keepBuild({ build, files }: KeptBuild, scope: string): Promise<void> {
  const cache = await caches.open(prefix + build);
  try {
    await Promise.all(
      files.map(async ({ path, sha256 }) => {
        // Asked for by its folder: some servers answer for index.html by sending elsewhere.
        const address = new URL(path === 'index.html' ? './' : path, scope);
        const answer = await fetch(address, { cache: 'no-cache', integrity: `sha256-${sha256}` });
        if (!answer.ok) throw new TypeError(`${address.href} answered ${answer.status}`);
        await cache.put(new URL(path, scope), answer);
      }),
    );
  } catch (error) {
    await caches.delete(prefix + build);
    throw error;
  }
}

/**
 * The file as this build has it; else as the build before, for a page that still runs; else from
 * the network, such as when the browser has thrown it away.
 */
export async function answerFromKept(
  { build }: KeptBuild,
  path: string,
  scope: string,
  request: Request,
): Promise<Response> {
  const address = new URL(path, scope);
  // Servers that vary their answers by origin still mean the same file.
  const options = { ignoreVary: true };
  const cache = await caches.open(prefix + build);
  const kept = (await cache.match(address, options)) ?? (await caches.match(address, options));
  return kept ?? fetch(request);
}

/** Drops what older builds kept, but for the one before this: pages of it may still be open. */
export async function dropOlderBuilds({ build }: KeptBuild): Promise<void> {
  // Names come in the order the caches were made.
  const others = (await caches.keys()).filter(
    (name) => name.startsWith(prefix) && name !== prefix + build,
  );
  await Promise.all(others.slice(0, -1).map((name) => caches.delete(name)));
}
