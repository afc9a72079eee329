/**
 * Claims the right to write sessions for as long as this page lives. False when another tab has
 * it; true where the browser has no Web Locks (W3C Web Locks API).
 */
export function claimWriting(name = 'leadline-writer'): Promise<boolean> {
  if (!('locks' in navigator)) return Promise.resolve(true);
  return new Promise((resolve) => {
    void navigator.locks.request(name, { ifAvailable: true }, (lock) => {
      resolve(lock !== null);
      return lock === null ? undefined : new Promise<void>(() => undefined);
    });
  });
}
