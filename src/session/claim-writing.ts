const rightToWrite = 'leadline-writer';

/**
 * Claims the right to write sessions for as long as this page lives. False when another tab has
 * it; true where the browser has no Web Locks (W3C Web Locks API).
 */
export function claimWriting(name = rightToWrite): Promise<boolean> {
  if (!('locks' in navigator)) return Promise.resolve(true);
  return new Promise((resolve) => {
    void navigator.locks.request(name, { ifAvailable: true }, (lock) => {
      resolve(lock !== null);
      return lock === null ? undefined : forever();
    });
  });
}

/**
 * Waits until no other tab has the right to write, then keeps it for as long as this page lives.
 * False when the signal was aborted before.
 */
export function awaitWriting(signal: AbortSignal, name = rightToWrite): Promise<boolean> {
  return new Promise((resolve) => {
    navigator.locks
      .request(name, { signal }, () => {
        resolve(true);
        return forever();
      })
      .catch(() => resolve(false));
  });
}

function forever(): Promise<void> {
  return new Promise(() => undefined);
}
