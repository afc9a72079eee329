/** What a page that follows is made of. */
export interface FollowParts {
  /** Whether a person can see the page now. */
  seen(): boolean;
  /** Waits for the right to write; false when the signal was aborted before it came. */
  wait(signal: AbortSignal): Promise<boolean>;
  /** Shows what is stored now. */
  show(): Promise<void>;
  /** The page writes from now on. */
  takeOver(): Promise<void>;
}

/** To be told what happens around a page that follows. */
export interface Follower {
  /** The page that writes has saved something. */
  saved(): void;
  /** The page came into sight, or went out of it. */
  looked(): void;
}

/**
 * Follows the page that writes, and takes its place once it is gone. Both only while a person sees
 * this page: one that reloads the page that writes gets the right back before a hidden page does, and
 * a hidden page takes no time from a take. What was saved meanwhile is shown when it is seen again.
 */
export function followWriter({ seen, wait, show, takeOver }: FollowParts): Follower {
  let stale = true;
  let showing = false;
  let writes = false;
  let waiting: AbortController | null = null;

  async function showNewest(): Promise<void> {
    if (showing) return;
    showing = true;
    while (stale && !writes && seen()) {
      stale = false;
      await show();
    }
    showing = false;
  }

  async function awaitTurn(): Promise<void> {
    if (waiting) return;
    const own = new AbortController();
    waiting = own;
    const granted = await wait(own.signal);
    if (waiting === own) waiting = null;
    if (!granted) return;
    writes = true;
    giveUpWaiting();
    await takeOver();
  }

  function giveUpWaiting(): void {
    waiting?.abort();
    waiting = null;
  }

  function looked(): void {
    if (writes) return;
    if (!seen()) return giveUpWaiting();
    void awaitTurn();
    void showNewest();
  }

  looked();
  return {
    looked,
    saved() {
      stale = true;
      void showNewest();
    },
  };
}
