import type { TakeOver } from './take-over';
import type { UpdateState, Updates } from './updates';

/**
 * Has the browser keep the app by the service worker at `script`, and follows its newer versions.
 * None takes over by itself: it waits for `takeOver`, then `reload` is called, once, when it is in
 * place. A browser that keeps nothing leaves the state as it is; the app then needs the network.
 */
export function followUpdates(
  container: ServiceWorkerContainer,
  script: string,
  reload: () => void,
): Updates {
  const listeners = new Set<() => void>();
  let state: UpdateState = { kept: false, ready: false };
  let registration: ServiceWorkerRegistration | null = null;
  let controlled = container.controller !== null;
  /** Another version has taken the place of the one this page came from. */
  let replaced = false;
  let asked = false;

  const look = (): void => {
    const active = registration?.active ?? null;
    const waiting = registration?.waiting ?? null;
    const now = { kept: active !== null, ready: replaced || (active !== null && waiting !== null) };
    if (now.kept === state.kept && now.ready === state.ready) return;
    state = now;
    for (const listener of listeners) listener();
  };

  const follow = (worker: ServiceWorker | null): void => {
    worker?.addEventListener('statechange', look);
  };

  container.addEventListener('controllerchange', () => {
    // The first one to answer this page belongs to it.
    if (controlled || asked) replaced = true;
    controlled = true;
    look();
    if (asked) reload();
    asked = false;
  });

  container.register(script, { updateViaCache: 'none' }).then(
    (found) => {
      registration = found;
      found.addEventListener('updatefound', () => follow(found.installing));
      for (const worker of [found.installing, found.waiting, found.active]) follow(worker);
      look();
    },
    () => undefined,
  );

  return {
    get state() {
      return state;
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    takeOver() {
      if (!state.ready) return;
      const waiting = registration?.waiting ?? null;
      if (waiting === null) return reload();
      asked = true;
      waiting.postMessage('take over' satisfies TakeOver);
    },
  };
}
