import { describe, expect, it } from 'vitest';
import { followUpdates } from '../../../src/offline/follow-updates';
import type { Updates } from '../../../src/offline/updates';
import { FakeContainer } from './fake-container';

interface Page {
  readonly updates: Updates;
  readonly container: FakeContainer;
  reloads(): number;
  changes(): number;
}

async function openPage(container = new FakeContainer()): Promise<Page> {
  let reloads = 0;
  let changes = 0;
  const updates = followUpdates(container.asContainer, 'worker.js', () => (reloads += 1));
  updates.subscribe(() => (changes += 1));
  await Promise.resolve();
  await Promise.resolve();
  return { updates, container, reloads: () => reloads, changes: () => changes };
}

/** A page that came from a version kept before. */
async function openAgain(): Promise<Page> {
  const container = new FakeContainer();
  container.registration.install();
  container.registration.activate();
  container.control();
  return openPage(container);
}

describe('followUpdates', () => {
  it('registers the worker past the browser’s own cache', async () => {
    const { container } = await openPage();
    expect(container.asked).toEqual([['worker.js', { updateViaCache: 'none' }]]);
  });

  it('takes the first version for no update, and then says that the app is kept', async () => {
    const { updates, container, reloads } = await openPage();
    container.registration.install();
    expect(updates.state).toEqual({ kept: false, ready: false });
    container.registration.activate();
    container.control();
    expect(updates.state).toEqual({ kept: true, ready: false });
    updates.takeOver();
    expect(reloads()).toBe(0);
  });

  it('says once that a newer version is ready, and leaves it waiting', async () => {
    const { updates, container, reloads, changes } = await openAgain();
    expect(updates.state).toEqual({ kept: true, ready: false });
    const before = changes();
    const newer = container.registration.install();
    expect(updates.state).toEqual({ kept: true, ready: true });
    expect(changes()).toBe(before + 1);
    expect(newer.sent).toEqual([]);
    expect(reloads()).toBe(0);
  });

  it('finds a version that was ready before the page opened', async () => {
    const container = new FakeContainer();
    container.registration.install();
    container.registration.activate();
    container.control();
    container.registration.install();
    const { updates } = await openPage(container);
    expect(updates.state.ready).toBe(true);
  });

  it('loads the page again when the wanted version is in place, not before, and once', async () => {
    const { updates, container, reloads } = await openAgain();
    const newer = container.registration.install();
    updates.takeOver();
    expect(newer.sent).toEqual(['take over']);
    expect(reloads()).toBe(0);
    container.registration.activate();
    container.control();
    expect(reloads()).toBe(1);
    container.control();
    expect(reloads()).toBe(1);
  });

  it('does so too on a page that no worker answered', async () => {
    const container = new FakeContainer();
    container.registration.install();
    container.registration.activate();
    const { updates, reloads } = await openPage(container);
    container.registration.install();
    updates.takeOver();
    container.registration.activate();
    container.control();
    expect(reloads()).toBe(1);
  });

  it('leaves the page alone when another tab let the version in, and offers to load it', async () => {
    const { updates, container, reloads } = await openAgain();
    container.registration.install();
    container.registration.activate();
    container.control();
    expect(reloads()).toBe(0);
    expect(updates.state.ready).toBe(true);
    updates.takeOver();
    expect(reloads()).toBe(1);
  });

  it('goes on from the network where the browser keeps nothing', async () => {
    const container = new FakeContainer();
    container.refused = true;
    const { updates } = await openPage(container);
    expect(updates.state).toEqual({ kept: false, ready: false });
  });

  it('calls nobody back who has left', async () => {
    const { updates, container } = await openAgain();
    let heard = 0;
    updates.subscribe(() => (heard += 1))();
    container.registration.install();
    expect(heard).toBe(0);
  });
});
