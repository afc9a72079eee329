import { describe, expect, it } from 'vitest';
import { followWriter } from '../../../../src/session/follow/follow-writer';

/** Lets what was promised come about. */
const soon = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

/** A page that follows one that has the right to write, until `leave` is called. */
function follow(seen = true) {
  const calls: string[] = [];
  const queue: ((granted: boolean) => void)[] = [];
  const world = { seen, shows: [] as (() => void)[] };
  const follower = followWriter({
    seen: () => world.seen,
    wait: (signal) =>
      new Promise((resolve) => {
        calls.push('waits');
        queue.push(resolve);
        signal.addEventListener('abort', () => {
          calls.push('gives up');
          queue.splice(queue.indexOf(resolve), 1);
          resolve(false);
        });
      }),
    show: () => {
      calls.push('shows');
      return new Promise((resolve) => world.shows.push(resolve));
    },
    takeOver: () => Promise.resolve(void calls.push('takes over')),
  });
  return {
    calls,
    saved: () => follower.saved(),
    see(now: boolean) {
      world.seen = now;
      follower.looked();
    },
    /** The newest look at the store comes to its end. */
    async shown() {
      world.shows.shift()?.();
      await soon();
    },
    async leave() {
      queue.shift()?.(true);
      await soon();
    },
  };
}

describe('a page that follows', () => {
  it('shows what is there at once, and again whenever something was saved', async () => {
    const page = follow();
    expect(page.calls).toEqual(['waits', 'shows']);
    await page.shown();
    page.saved();
    expect(page.calls).toEqual(['waits', 'shows', 'shows']);
  });

  it('looks once more, not once for each, when much was saved while it looked', async () => {
    const page = follow();
    for (let saved = 0; saved < 5; saved++) page.saved();
    await page.shown();
    await page.shown();
    expect(page.calls).toEqual(['waits', 'shows', 'shows']);
  });

  it('writes from now on when the other is gone, and looks no more', async () => {
    const page = follow();
    await page.shown();
    await page.leave();
    page.saved();
    page.see(true);
    expect(page.calls).toEqual(['waits', 'shows', 'takes over']);
  });

  it('does neither while nobody sees it, and makes up for it then', async () => {
    const page = follow(false);
    page.saved();
    expect(page.calls).toEqual([]);
    page.see(true);
    expect(page.calls).toEqual(['waits', 'shows']);
    await page.shown();
  });

  it('leaves the right to others as soon as it is hidden', async () => {
    const page = follow();
    await page.shown();
    page.see(false);
    await page.leave();
    expect(page.calls).toEqual(['waits', 'shows', 'gives up']);
    page.see(true);
    await page.leave();
    expect(page.calls).toEqual(['waits', 'shows', 'gives up', 'waits', 'takes over']);
  });

  it('waits once, however often it is looked at', () => {
    const page = follow();
    page.see(true);
    page.see(true);
    expect(page.calls.filter((call) => call === 'waits')).toHaveLength(1);
  });
});
