import { layoutFromName } from '../system/layout';
import { isTrouble } from '../trouble';
import { askToKeep } from './ask-to-keep';
import type { BenchParts } from './bench-parts';
import { browserParts } from './browser-parts';
import type { Bench } from './bench';
import { awaitWriting, claimWriting } from './claim-writing';
import { followWriter } from './follow/follow-writer';
import { savedNotes } from './follow/saved-notes';
import { tellSaves } from './follow/tell-saves';
import { newSession } from './new-session';
import { SessionBench } from './session-bench';
import type { SessionStore } from './session-store';

/** How often a page tries again to save what could not be saved, milliseconds. */
const saveAgainEvery = 10_000;

/**
 * Opens the stored session, or a new one, as the page's bench. A stored session that cannot be
 * opened is left where it is and said; while another tab writes, this page shows what that one
 * saves, and takes its place once it is gone. Captures that were not read yet, such as after a
 * crash, are read now.
 */
export async function createBench(
  store: SessionStore,
  parts: BenchParts = browserParts(store),
): Promise<Bench> {
  const [stored, writes] = await Promise.all([store.load(), claimWriting()]);
  const fresh = newSession(parts.newId(), parts.now());
  const document = stored === null || isTrouble(stored) ? fresh : stored;
  const layout = layoutFromName(document.layout);
  if (isTrouble(layout)) throw new RangeError(layout.sentence);
  const notes = savedNotes();
  const told = tellSaves(parts.store, () => notes.say());
  const bench = new SessionBench({ ...parts, store: told }, document, layout);
  if (isTrouble(stored)) bench.raise(stored);
  if (writes) beginWriting(bench, told);
  else {
    bench.follow();
    const follower = followWriter({
      seen: () => globalThis.document.visibilityState === 'visible',
      wait: awaitWriting,
      show: () => bench.showStored(),
      async takeOver() {
        await bench.takeOver();
        beginWriting(bench, told);
      },
    });
    notes.listen(() => follower.saved());
    globalThis.document.addEventListener('visibilitychange', () => follower.looked());
  }
  return bench;
}

function beginWriting(bench: SessionBench, store: SessionStore): void {
  // What was deleted on a page that is gone goes, with recordings that nothing names any more.
  void store.remove(null, new Set());
  if (bench.state.document.rig === 'live') void bench.lookAtDevices(false);
  void bench.resume();
  setInterval(() => bench.saveAgain(), saveAgainEvery);
  askToKeep(bench);
}
