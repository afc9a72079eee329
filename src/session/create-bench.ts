import { layoutFromName } from '../system/layout';
import { isTrouble, trouble } from '../trouble';
import type { BenchParts } from './bench-parts';
import { browserParts } from './browser-parts';
import type { Bench } from './bench';
import { newSession } from './new-session';
import { SessionBench } from './session-bench';
import type { SessionStore } from './session-store';
import { claimWriting } from './claim-writing';

/**
 * Opens the stored session, or a new one, as the page's bench. A stored session that cannot be
 * opened is left where it is and said; a session another tab writes is shown, not changed.
 * Captures that were not read yet, such as after a crash, are read now.
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
  const bench = new SessionBench(parts, document, layout);
  if (isTrouble(stored)) bench.raise(stored);
  if (!writes) {
    bench.follow();
    bench.raise(
      trouble(
        'storage',
        'Leadline is open in another tab, which writes this session. This tab only shows it; close the other one and reload to work here.',
      ),
    );
    return bench;
  }
  // What was deleted on a page that is gone goes, with recordings that nothing names any more.
  void store.remove(null, new Set());
  if (document.rig === 'live') void bench.lookAtDevices(false);
  void bench.resume();
  return bench;
}
