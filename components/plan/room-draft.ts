import type { Bench } from '../../src/session/bench';
import type { DeclaredRoom } from '../../src/system/declared-system';
import { createMemory } from '../probe/memory';

/** Sizes that were typed and are not drawn yet; empty when none are. */
export type RoomDraft = Readonly<Partial<DeclaredRoom>>;

const drafts = createMemory<ReadonlyMap<string, RoomDraft>>(() => new Map());

/** What was typed in the session in hand; kept, session by session, until the page is closed. */
export function roomDraft(bench: Bench): RoomDraft {
  return drafts.of(bench).get(bench.state.document.id) ?? {};
}

/** Keeps what was typed in the session in hand. */
export function keepRoomDraft(bench: Bench, draft: RoomDraft): void {
  drafts.keep(bench, new Map(drafts.of(bench)).set(bench.state.document.id, draft));
}
