import type { Late } from '../../src/late';

/**
 * Loads parts one after another, each when the page has nothing else to do. One that does not come
 * says nothing: it is asked for again when it is needed.
 */
export async function loadWhenIdle(parts: readonly Late<object>[]): Promise<void> {
  for (const part of parts) {
    await idle();
    await part.load();
  }
}

/** Resolves when the page has nothing to do; a moment later where browsers cannot tell. */
function idle(): Promise<void> {
  return new Promise((resolve) => {
    if (typeof requestIdleCallback === 'function') requestIdleCallback(() => resolve());
    else setTimeout(resolve, 200);
  });
}
