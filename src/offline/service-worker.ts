import { answerFromKept, dropOlderBuilds, keepBuild } from './keep-build';
import type { KeptBuild } from './kept-build';
import { keptPath } from './kept-path';
import type { ServiceScope } from './service-scope';
import type { TakeOver } from './take-over';

/** Written in when the app is built: the files of the build this belongs to. */
declare const __KEPT_BUILD__: KeptBuild;
declare const self: ServiceScope;

const kept = __KEPT_BUILD__;
const takeOver: TakeOver = 'take over';
const { scope } = self.registration;

self.addEventListener('install', (event) => event.waitUntil(keepBuild(kept, scope)));

// The page that brought this in is answered from now on, also before it is loaded again.
self.addEventListener('activate', (event) =>
  event.waitUntil(dropOlderBuilds(kept).then(() => self.clients.claim())),
);

self.addEventListener('fetch', (event) => {
  const path = keptPath(event.request, scope);
  if (path === null) return;
  event.respondWith(answerFromKept(kept, path, scope, event.request));
});

// Only a person's wish lets a new version take the place of one in use.
self.addEventListener('message', ({ data }) => {
  if (data === takeOver) void self.skipWaiting();
});
