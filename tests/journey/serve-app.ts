import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { preview } from 'vite';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** The built app on a server of its own. */
export interface ServedApp {
  readonly address: string;
  close(): Promise<void>;
}

/** Serves the app as `npm start` does; `folder` holds another build than the one of `npm run build`. */
export async function serveApp(folder = `${root}dist`): Promise<ServedApp> {
  if (!existsSync(`${folder}/index.html`)) {
    throw new Error('The journeys run on the built app: npm run build first.');
  }
  const server = await preview({
    root,
    logLevel: 'error',
    build: { outDir: folder },
    preview: { host: '127.0.0.1', port: 5341, strictPort: false },
  });
  const address = server.resolvedUrls?.local[0];
  if (address === undefined) throw new Error('The preview server has no address.');
  return { address, close: () => server.close() };
}
