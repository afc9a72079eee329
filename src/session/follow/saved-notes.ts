/** How the pages of one browser tell each other that something was saved. */
export interface SavedNotes {
  /** Tells all other pages. */
  say(): void;
  /** Calls back whenever another page says so, as long as this page lives. */
  listen(heard: () => void): void;
}

/** Notes over a BroadcastChannel; a browser without one is silent. */
export function savedNotes(name = 'leadline-saved'): SavedNotes {
  if (!('BroadcastChannel' in globalThis)) {
    return { say: () => undefined, listen: () => undefined };
  }
  const channel = new BroadcastChannel(name);
  return {
    say: () => channel.postMessage('saved'),
    listen: (heard) => channel.addEventListener('message', heard),
  };
}
