import type { Bench } from '../../src/session/bench';
import type { SessionDocument } from '../../src/session/document';

/** Changes how the live rig is set up, under a name that undo can show. */
export function changeLive(
  bench: Bench | null,
  name: string,
  live: Partial<SessionDocument['live']>,
): void {
  bench?.change(name, (document) => ({ ...document, live: { ...document.live, ...live } }));
}
